"""A face wider or higher than one panel has aesthetic joint lines.

Why: a crew can keep no more than one panel wet and even. Without a line to stop at, every day's end shows.

passes
    elevations:
      E1:
        {width: 12 ft, height: 9 ft,
         layout: {mode: given, vertical_lines: [4 ft, 8 ft], horizontal_lines: [4 ft 6 in]}}
fails AJT-03a at elevations.E1.width
    elevations: {E1: {width: 12 ft, layout: {mode: given, vertical_lines: []}}}
fails AJT-03b at elevations.E1.height
    elevations: {E1: {height: 9 ft, layout: {mode: given, horizontal_lines: []}}}
"""

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.absence import all_known
from specgen.model.typed_views import Description, Elevation
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "AJT-03",
    "Joint lines on faces larger than a panel",
    remedy="Give the joint lines of this face, or request a layout.",
    steps="aesthetic_joints",
    documents="D07",
)


@RULE.test(
    "a",
    STOP,
    "The elevation is {found} wide with no vertical joint line; maximum panel width {wanted}.",
    at="elevation.width",
    basis="practice",
    remedy="Give vertical joint lines a maximum of {wanted} apart, or request a layout.",
)
def no_vertical_line(elevation: Elevation, project: Description) -> Violations:
    """The face is wider than a panel and has no vertical line."""
    if _undivided(elevation, "vertical_lines", "width", project.panel_limits.max_width):
        yield violation(elevation.width, wanted=project.panel_limits.max_width)


@RULE.test(
    "b",
    STOP,
    "The elevation is {found} high with no horizontal joint line; maximum panel height {wanted}.",
    at="elevation.height",
    basis="practice",
    remedy="Give horizontal joint lines a maximum of {wanted} apart, or request a layout.",
)
def no_horizontal_line(elevation: Elevation, project: Description) -> Violations:
    """The face is higher than a panel and has no horizontal line."""
    if _undivided(elevation, "horizontal_lines", "height", project.panel_limits.max_height):
        yield violation(elevation.height, wanted=project.panel_limits.max_height)


def _undivided(elevation: Elevation, lines: str, side: str, most: Quantity) -> bool:
    """Whether the lines are given, there are none, and a side of the face is longer than a panel may be."""
    return all_known(
        lambda: elevation.layout.mode == "given",
        lambda: not getattr(elevation.layout, lines),
        lambda: more(getattr(elevation, side), most),
    )
