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

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.quantities.comparison import equal, more

RULE = Rule(
    "FIN-01",
    "Smoothing as two thin skims",
    remedy="Two thin coats; return to base coat for faults.",
    steps="smoothing_1 smoothing_2",
    documents="D08 D11",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "{found} smoothing coats are planned; it is {wanted} skims.",
    needs="smoothing.coats",
    limit="smoothing.coats",
)
def other_number_of_skims(project: Any, limit: Any) -> Iterator[Found]:
    """The number of skims is another one."""
    if not equal(project.smoothing.coats, limit):
        yield found(project.smoothing.coats, wanted=limit)


@RULE.clause(
    "b",
    STOP,
    "Smoothing is {found} thick in all; {wanted} is the most, and more cannot mend a bad base.",
    needs="smoothing.total_thickness",
    limit="smoothing.total_thickness",
)
def too_thick(project: Any, limit: Any) -> Iterator[Found]:
    """All skims together are too thick."""
    if more(project.smoothing.total_thickness, limit):
        yield found(project.smoothing.total_thickness, wanted=limit)
