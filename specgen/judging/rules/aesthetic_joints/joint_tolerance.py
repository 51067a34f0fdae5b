"""Aesthetic joints differ from one another by less than the eye can see.

Why: the lines are the only thing on a gloss wall that stands still. Two that differ are compared at every
look.

passes
    aesthetic_joint: {tolerance: 1/16 in}
fails AJT-06a at aesthetic_joint.tolerance
    aesthetic_joint: {tolerance: 1/8 in}
fails AJT-06b at elevations.E1.layout.horizontal_lines
    joints: {}
    elevations:
      E1:
        {height: 12 ft, base_above_grade: 1 ft, right_end: outside_corner, right_meets: E2,
         layout: {mode: given, horizontal_lines: [4 ft, 8 ft]}}
      E2: {height: 12 ft, base_above_grade: 1 ft, layout: {mode: given, horizontal_lines: [4 ft, 8-1/4 ft]}}
"""

from fractions import Fraction

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.typed_views import Elevation
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "AJT-06",
    "Aesthetic joint tolerance",
    remedy="Reduce the tolerance to {aesthetic_joint.tolerance}, and cut with one template from a common datum "
    "around the building.",
    steps="aesthetic_joints",
    documents="D07 D10",
)

RULE.clause(
    "a",
    CAUTION,
    "Aesthetic joint tolerance is {found}; maximum {wanted}, above which joints do not look alike.",
    when="aesthetic_joint.tolerance > limit",
    basis="memory",
    limit="aesthetic_joint.tolerance",
)


@RULE.test(
    "b",
    CAUTION,
    "Joint lines miss each other at the corner by {found}; above {wanted} it shows.",
    at="elevation.layout.horizontal_lines",
    limit="aesthetic_joint.corner",
    remedy="Measure the lines of both elevations from a common datum around the building, and cut with one template.",
)
def missed_at_corner(elevation: Elevation, limit: Quantity) -> Violations:
    """A line of an elevation has no line at its height on the one it meets."""
    worst = Fraction(0)
    for side in ("left_meets", "right_meets"):
        other = elevation.get(side)
        # Lines that are requested are proposed at the height of those they meet.
        if other is not None and elevation.layout.mode == other.layout.mode == "given":
            worst = max([worst, *_misses(elevation, other)])
    found = Quantity(worst, "length", limit.unit)
    if more(found, limit):
        yield violation(found, wanted=limit)


def _misses(elevation: Elevation, other: Elevation) -> list[Fraction]:
    """How far each line within the height of both is from the nearest of the other; movement joints are lines too."""
    lines = _heights(other)
    low, high = other.base_above_grade.amount, (other.base_above_grade + other.height).amount
    return [
        min((abs(at - line) for line in lines), default=min(at - low, high - at))
        for at in _heights(elevation)
        if low < at < high
    ]


def _heights(elevation: Elevation) -> list[Fraction]:
    """The heights above grade of the lines and level joints of an elevation."""
    project = elevation.project
    joints = [
        project.view(("joints", mark)) for mark in project.find_referring(("joints",), "elevation", elevation.mark)
    ]
    level = [joint.get("at") for joint in joints if joint.get("runs") == "horizontal"]
    places = [*elevation.layout.horizontal_lines, *(at for at in level if at is not None)]
    return [(elevation.base_above_grade + at).amount for at in places]
