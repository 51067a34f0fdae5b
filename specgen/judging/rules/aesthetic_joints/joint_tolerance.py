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
from typing import NamedTuple

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.typed_views import Elevation
from specgen.model.value_text import value_text
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
    "Joint lines miss each other at the corner by {found}; maximum {wanted}, above which it shows.",
    at="elevation.layout.horizontal_lines",
    limit="aesthetic_joint.corner",
    remedy="Measure the lines of both elevations from a common datum around the building, and cut with one template.",
)
def missed_at_corner(elevation: Elevation, limit: Quantity) -> Violations:
    """A line of an elevation has no line at its height on the one it meets."""
    misses = list[_Miss]()
    for side in ("left_meets", "right_meets"):
        other = elevation.get(side)
        # Lines that are requested are proposed at the height of those they meet.
        if other is not None and elevation.layout.mode == other.layout.mode == "given":
            misses += _misses(elevation, other)
    worst = max(misses, key=lambda miss: miss.by, default=None)
    if worst is not None and more(Quantity(worst.by, "length", limit.unit), limit):
        yield violation(_tell(elevation, worst, limit), wanted=limit)


class _Miss(NamedTuple):
    """A line, and how far it is from the nearest of the elevation that it meets; heights above grade in meters."""

    by: Fraction
    at: Fraction
    other: str
    nearest: Fraction | None  # none where there is no line to meet


def _misses(elevation: Elevation, other: Elevation) -> list[_Miss]:
    """What the lines within the height of both elevations miss by; movement joints are lines too."""
    lines = _heights(other)
    low, high = other.base_above_grade.amount, (other.base_above_grade + other.height).amount
    found = []
    for at in _heights(elevation):
        if low < at < high:
            nearest = min(lines, key=lambda line: abs(at - line), default=None)
            by = min(at - low, high - at) if nearest is None else abs(at - nearest)
            found.append(_Miss(by, at, other.mark, nearest))
    return found


def _tell(elevation: Elevation, miss: _Miss, limit: Quantity) -> str:
    """`3 in: E1 at 9 ft, E2 at 9 ft 3 in above grade`."""
    project = elevation.project

    def told(meters: Fraction, unit: str) -> str:
        return value_text(Quantity(meters, "length", unit), None, project.system, project.both_units)

    high = "ft" if project.system == "ip" else "m"
    own, missed = f"{elevation.mark} at {told(miss.at, high)}", told(miss.by, limit.unit)
    if miss.nearest is None:
        return f"{missed}: {own} above grade, {miss.other} without a line"
    return f"{missed}: {own}, {miss.other} at {told(miss.nearest, high)} above grade"


def _heights(elevation: Elevation) -> list[Fraction]:
    """The heights above grade of the lines and level joints of an elevation."""
    project = elevation.project
    joints = [("joints", mark) for mark in project.find_referring(("joints",), "elevation", elevation.mark)]
    # Where one is not known, neither is what it meets: that is asked, and not taken for a miss.
    level = [project.value((*joint, "at")) for joint in joints if project.value((*joint, "runs")) == "horizontal"]
    places = [*elevation.layout.horizontal_lines, *level]
    return [(elevation.base_above_grade + at).amount for at in places]
