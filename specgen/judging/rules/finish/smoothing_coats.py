"""Smoothing is two skims, and thin ones.

Why: the smoothing coat takes off the sandpaper feel of the base coat and nothing more. Laid thick
to hide faults it cracks, and the faults come through again.

passes
    smoothing: {coats: 2, total_thickness: 1/32 in}
fails FIN-01a at smoothing.coats
    smoothing: {coats: 1}
fails FIN-01b at smoothing.total_thickness
    smoothing: {total_thickness: 1/16 in}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "FIN-01",
    "Smoothing as two thin skims",
    remedy="Two thin coats; return to base coat for faults.",
    steps="smoothing_1 smoothing_2",
    documents="D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "Smoothing coats planned: {found}; required: {wanted} thin skims.",
    when="smoothing.coats != limit",
    limit="smoothing.coats",
)

RULE.clause(
    "b",
    STOP,
    "Smoothing is {found} thick in all; {wanted} is the most, and more cannot mend a bad base.",
    when="smoothing.total_thickness > limit",
    limit="smoothing.total_thickness",
)
