"""Corners of openings have extra mesh, whether a joint line runs there or not.

Why: stress gathers at a corner of an opening. In a panel it opens a crack at a slant; at a joint line it opens along
the groove, where the mesh is cut into first.

passes
    joints: {}
    elevations:
      E1:
        {width: 8 ft, height: 4 ft, openings: {},
         layout: {mode: given, vertical_lines: [4 ft], horizontal_lines: []}}
fails AJT-04a at elevations.E1.openings
    joints: {}
    elevations:
      E1:
        {width: 12 ft, height: 12 ft, openings: {A: {x: 4 ft, y: 4 ft, width: 4 ft, height: 4 ft}},
         layout: {mode: given, vertical_lines: [6 ft], horizontal_lines: [6 ft]}}
fails AJT-04b at elevations.E1.openings
    joints: {}
    elevations:
      E1:
        {width: 12 ft, height: 12 ft, openings: {A: {x: 4 ft, y: 4 ft, width: 4 ft, height: 4 ft}},
         layout: {mode: given, vertical_lines: [4 ft, 8 ft], horizontal_lines: [6 ft]}}
"""

from collections.abc import Iterable

from specgen.judging.papers import covering, of_kind
from specgen.judging.rule import NOTE, LaidOut, Rule, Violations, violation
from specgen.judging.three_valued import list_documents
from specgen.model.layout import AESTHETIC, ElevationLayout, Point
from specgen.model.project import asked_once
from specgen.model.typed_views import Description, Elevation

RULE = Rule(
    "AJT-04",
    "Corners of openings in the joint layout",
    remedy="Set diagonal mesh at each corner, and carry the detail mesh through the groove.",
    steps="aesthetic_joints mesh",
    documents="D07 D08",
)


@RULE.test(
    "a",
    NOTE,
    "Corners of openings fall inside a panel: {found}.",
    at="elevation.openings",
    basis="guide_eifs_p24 memory",
)
def corner_in_panel(elevation: Elevation, layout: LaidOut) -> Violations:
    """A corner of an opening is one of a panel that goes round it."""
    laid = layout()
    inner = {point for panel in laid.panels for loop in (panel.outline, *panel.holes) for point in _hollow(loop)}
    openings = _at_corners(laid, inner)
    if openings:
        yield violation(openings)


@RULE.test(
    "b",
    NOTE,
    "Joint lines end on corners of openings: {found}.",
    at="elevation.openings",
    basis="guide_eifs_p24 memory",
    remedy="Set diagonal mesh at each corner, and carry the detail mesh through the groove, by the EIFS manufacturer's "
    "written detail.",
)
def line_at_corner(elevation: Elevation, layout: LaidOut, project: Description) -> Violations:
    """An aesthetic joint ends on a corner of an opening."""
    laid = layout()
    lines = [joint for joint in laid.joints if joint.kind == AESTHETIC]
    openings = _at_corners(laid, {p for j in lines for p in ((j.x1, j.y1), (j.x2, j.y2))})
    if openings:
        yield violation(openings, remedy=_name_detail(project))


@asked_once
def _name_detail(project: Description) -> str:
    """What to do, per the drawings of the mesh that are attached; empty where there is none."""
    drawings = [paper.mark for paper in list_documents(project, (of_kind("drawing"), covering("mesh")))]
    if not drawings:
        return ""
    return f"Set diagonal mesh at each corner, and carry the detail mesh through the groove, per {', '.join(drawings)}."


def _hollow(loop: tuple[Point, ...]) -> Iterable[Point]:
    """The corners of a loop, wall at its left hand, at which the wall goes round what is cut out."""
    for number, (x, y) in enumerate(loop):
        (x0, y0), (x1, y1) = loop[number - 1], loop[(number + 1) % len(loop)]
        if (x - x0) * (y1 - y) < (y - y0) * (x1 - x):
            yield x, y


def _at_corners(laid: ElevationLayout, points: set[Point]) -> tuple[str, ...]:
    """The openings with a corner among some points."""
    return tuple(
        mark
        for mark, x, y, width, height in laid.openings
        if points & {(x, y), (x + width, y), (x, y + height), (x + width, y + height)}
    )
