"""The board ends clear of the ground, and higher where the ground is soil.

Why: splash, soil and snow keep the foot of a wall wet. A board that runs into the ground also hides
what goes on behind it.

passes
    elevations: {E1: {grade_clearance: 8 in, grade_is_soil: yes}}
fails BAS-05a at elevations.E1.grade_clearance
    elevations: {E1: {grade_clearance: 4 in}}
fails BAS-05b at elevations.E1.grade_clearance
    elevations: {E1: {grade_clearance: 6 in, grade_is_soil: yes}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, STOP, Found, Rule, found
from specgen.judging.three_valued import every
from specgen.quantities.comparison import less

RULE = Rule(
    "BAS-05",
    "Board clear of the ground",
    remedy="6 in clear; 8 in where the ground is soil.",
    steps="board_layout",
    documents="D07",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The board ends {found} above the ground; {wanted} is the least.",
    each="elevations",
    needs="elevations.*.grade_clearance",
    limit="grade.clearance",
)
def too_low(elevation: Any, limit: Any) -> Iterator[Found]:
    """The board ends lower above the ground than it may."""
    if less(elevation.grade_clearance, limit):
        yield found(elevation.grade_clearance, wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "The board ends {found} above soil; {wanted} is common: confirm.",
    each="elevations",
    needs="elevations.*.grade_is_soil elevations.*.grade_clearance",
    limit="grade.clearance_soil",
)
def low_over_soil(elevation: Any, limit: Any, limits: Any) -> Iterator[Found]:
    """The board clears the ground, but by less than is common over soil."""
    least = limits("grade.clearance")
    if every(lambda: elevation.grade_is_soil, lambda: _between(elevation.grade_clearance, least, limit)):
        yield found(elevation.grade_clearance, wanted=limit)


def _between(clearance: Any, least: Any, limit: Any) -> bool:
    """Whether a clearance does for ground of any kind, but not for soil."""
    return not less(clearance, least) and less(clearance, limit)
