"""No aesthetic joint line runs along an edge of a ledge.

Why: a router that follows the edge breaks it, and the mesh of ledge and groove cannot both be wrapped there. A line
that meets a ledge away from its edges stops against it and goes on behind it.

passes
    joints: {}
    details: {L1: {kind: ledge, elevation: E1, x: 2 ft, y: 3 ft, width: 4 ft, height: 9 in}}
    elevations:
      E1:
        {width: 8 ft, height: 8 ft, openings: {},
         layout: {mode: given, vertical_lines: [4 ft], horizontal_lines: [5 ft]}}
fails AJT-08a at elevations.E1.layout.horizontal_lines
    joints: {}
    details: {L1: {kind: ledge, elevation: E1, x: 2 ft, y: 3 ft 3 in, width: 4 ft, height: 9 in}}
    elevations:
      E1:
        {width: 8 ft, height: 8 ft, openings: {},
         layout: {mode: given, vertical_lines: [4 ft], horizontal_lines: [4 ft]}}
"""

from collections.abc import Iterator
from fractions import Fraction

from specgen.judging.rule import CAUTION, LaidOut, Rule, Violations, violation
from specgen.model.layout import AESTHETIC, JointRun
from specgen.model.typed_views import Description, Elevation, WaterDetail
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "AJT-08",
    "Joint lines at ledges",
    remedy="Move the line or the ledge so that they are a minimum of {aesthetic_joint.from_ledge} apart, or so that "
    "the line meets the ledge away from its edges, before boards are set.",
    steps="aesthetic_joints",
    documents="D07",
)

Stretch = tuple[Fraction, Fraction]


@RULE.test(
    "a",
    CAUTION,
    "Aesthetic joint lines run along an edge of a ledge: {found}; minimum {wanted} apart.",
    at="elevation.layout.horizontal_lines",
    limit="aesthetic_joint.from_ledge",
)
def line_on_edge(elevation: Elevation, project: Description, layout: LaidOut, limit: Quantity) -> Violations:
    """A line lies on an edge of a ledge, or nearer to it than a groove can be cut."""
    runs = [run for run in layout().joints if run.kind == AESTHETIC]
    for one in project.details.find_referring("elevation", elevation.mark):
        if one.kind == "ledge" and one.elevation == elevation:
            lines = dict.fromkeys(run.mark for run in runs if _is_along(one, run, limit.to("m")))
            if lines:
                yield violation(f"{one.mark} {', '.join(lines)}", wanted=limit)


def _is_along(ledge: WaterDetail, run: JointRun, apart: Fraction) -> bool:
    """Whether a run comes near an edge that is parallel to it; at the edge itself it is left out, and ends there."""
    upright = run.x1 == run.x2
    at, start, end = (run.x1, run.y1, run.y2) if upright else (run.y1, run.x1, run.x2)
    sides = list(_list_sides(ledge))
    if len(sides) < 2:
        return False
    across, along = sides if upright else reversed(sides)
    return start <= along[1] and end >= along[0] and any(abs(at - edge) < apart for edge in across)


def _list_sides(ledge: WaterDetail) -> Iterator[Stretch]:
    """From where to where a ledge reaches across and up, in meters; nothing for a side whose place is not given."""
    for place, size in (("x", "width"), ("y", "height")):
        start, length = ledge.get(place), ledge.get(size)
        if start is not None and (length is not None or size == "height"):
            yield start.to("m"), start.to("m") + (length.to("m") if length is not None else 0)
