"""An elevation without joint lines is no larger than one panel.

Why: A face larger than a panel cannot be sprayed and kept even in one go.

passes
    {elevations: {E1: {layout: {mode: given, vertical_lines: [5 ft], horizontal_lines: []}, width: 10 ft, height: 5 ft}}}
fails AJT-03a at elevations.E1.width
    {elevations: {E1: {layout: {mode: given, vertical_lines: []}, width: 6 ft}}}
fails AJT-03b at elevations.E1.height
    {elevations: {E1: {layout: {mode: given, horizontal_lines: []}, height: 6 ft}}}
"""

from collections.abc import Iterator
from typing import Any

from ....vocabulary.comparison import more
from ...rule import STOP, Found, Rule, found
from ...settling import every

RULE = Rule(
    "AJT-03",
    "Joint lines where a panel ends",
    remedy="Give lines, or write request.",
    steps="aesthetic_joints",
    documents="D07",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The elevation is {found} wide and no vertical joint line is given; {wanted} is the most without one.",
    needs="elevations.*.layout.mode elevations.*.layout.vertical_lines elevations.*.width panel_limits.max_width",
    each="elevations",
    limit="panel.width",
    at="elevations.*.width",
)
def no_vertical_line(elevation: Any, limit: Any) -> Iterator[Found]:
    """The elevation is wider than a panel and has no vertical line."""
    layout = elevation.layout
    if layout.mode == "given" and every(lambda: not layout.vertical_lines, lambda: more(elevation.width, limit)):
        yield found(elevation.width, wanted=limit)


@RULE.clause(
    "b",
    STOP,
    "The elevation is {found} high and no horizontal joint line is given; {wanted} is the most without one.",
    needs="elevations.*.layout.mode elevations.*.layout.horizontal_lines elevations.*.height panel_limits.max_height",
    each="elevations",
    limit="panel.height",
    at="elevations.*.height",
)
def no_horizontal_line(elevation: Any, limit: Any) -> Iterator[Found]:
    """The elevation is higher than a panel and has no horizontal line."""
    layout = elevation.layout
    if layout.mode == "given" and every(lambda: not layout.horizontal_lines, lambda: more(elevation.height, limit)):
        yield found(elevation.height, wanted=limit)
