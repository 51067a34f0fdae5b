"""The elevations with their layouts: size, where the lines come from, panels, net area, aesthetic joints, judgment."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.layouts import find_missing, list_layouts, tell_area, tell_consent, tell_length
from specgen.documents.ledge_strips import is_cut_narrow
from specgen.documents.marks import list_marks, name_member
from specgen.documents.views._areas import name_missing
from specgen.model.layout import ElevationLayout

_OPEN = DisplayValue("[open]", open=True)
_LINES = {
    "given": "as given by the architect",
    "through": "proposed, running through",
    "stopped": "proposed, stopping at openings",
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each elevation; what its layout waits for where that is not known."""
    found = list_layouts(context)
    lines = [_line(context, mark, found.get(mark)) for mark in list_marks(context, "elevations")]
    lines = lines or [(context.ask(("elevations",)), *("",) * 6)]
    header = ("Elevation", "Width x height", "Joint lines", "Panels", "Net area", "Aesthetic joints", "Judgment")
    return TableView(header, tuple(lines), (16, 15, 19, 7, 11, 11, 21))


def _line(context: DocumentContext, mark: str, layouts: tuple[ElevationLayout, ...] | None) -> tuple[Any, ...]:
    name = name_member(context, "elevations", mark)
    size = [context.display(("elevations", mark, "width")), " x ", context.display(("elevations", mark, "height"))]
    if not layouts:
        absent = find_missing(context, mark)
        return (name, size, name_missing(context, absent) if absent else _OPEN, *[_OPEN] * 4)
    layout = layouts[0]
    return (
        name,
        size,
        [_LINES[layout.proposal], *_name_drawing(context, mark)],
        str(len(layout.panels)),
        tell_area(context, sum((panel.net_area for panel in layout.panels), layout.width * 0)),
        tell_length(context, layout.score.joint_length),
        _judge(context, mark, layout),
    )


def _name_drawing(context: DocumentContext, mark: str) -> list[Any]:
    """`; drawing A-201, November 20, 2026`; nothing where no drawing is named."""
    path = ("elevations", mark, "drawing")
    return ["; drawing ", context.display(path)] if context.project.is_given(path) else []


def _judge(context: DocumentContext, mark: str, layout: ElevationLayout) -> str:
    """How many panels are past a limit, and how many are narrower than the minimum side, or cut so by a ledge."""
    cut = sum(is_cut_narrow(context, mark, panel) for panel in layout.panels)
    over, narrow = layout.score.over_limits, layout.score.slivers + cut
    told = [f"{over} over the panel limits"] if over else []
    told += [f"{narrow} under the minimum side: {tell_consent(context, mark)}"] if narrow else []
    return "; ".join(told) or "within the panel limits"
