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
    remedy="Apply smoothing as thin skims; correct faults in the base coat.",
    steps="smoothing_1 smoothing_2",
    documents="D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "Smoothing coats planned: {found}; required: {wanted} thin skims.",
    when="smoothing.coats != limit",
    limit="smoothing.coats",
    remedy="Plan {smoothing.coats} thin skims, each left to dry and sanded.",
)

RULE.clause(
    "b",
    STOP,
    "Smoothing is {found} thick in all; maximum {wanted}. More does not correct a poor base coat.",
    when="smoothing.total_thickness > limit",
    limit="smoothing.total_thickness",
    remedy="Correct faults in the base coat, and keep the smoothing to {smoothing.total_thickness} in all.",
)
