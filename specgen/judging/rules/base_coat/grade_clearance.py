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

from specgen.judging.rule import CAUTION, STOP, Limits, Rule, Violations, violation
from specgen.model.absence import all_known
from specgen.model.typed_views import Elevation
from specgen.quantities.comparison import less
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "BAS-05",
    "Grade clearance",
    remedy="End the board a minimum of {grade.clearance} above grade, {grade.clearance_soil} above soil.",
    steps="board_layout",
    documents="D07",
)

RULE.clause(
    "a",
    STOP,
    "The board ends {found} above grade; minimum {wanted}.",
    when="elevation.grade_clearance < limit",
    limit="grade.clearance",
)


@RULE.test(
    "b",
    CAUTION,
    "The board ends {found} above soil; usual minimum {wanted}.",
    at="elevation.grade_clearance",
    limit="grade.clearance_soil",
    remedy="End the board a minimum of {grade.clearance_soil} above soil.",
)
def low_over_soil(elevation: Elevation, limit: Quantity, limits: Limits) -> Violations:
    """The board clears the ground, but by less than is common over soil."""
    least = limits("grade.clearance")
    if all_known(lambda: elevation.grade_is_soil, lambda: _between(elevation.grade_clearance, least, limit)):
        yield violation(elevation.grade_clearance, wanted=limit)


def _between(clearance: Quantity, least: Quantity, limit: Quantity) -> bool:
    """Whether a clearance does for ground of any kind, but not for soil."""
    return not less(clearance, least) and less(clearance, limit)
