"""Every panel between joints: place, size, net area, its shape where it is no rectangle, and the panel limits."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.layouts import list_layouts, name_shape, tell_area, tell_length
from specgen.model.layout import Panel
from specgen.quantities.comparison import Outcome, Sense, compare
from specgen.quantities.quantity import Quantity

_JUDGED = (
    ("width", "max_width", Sense.AT_MOST, "wider than"),
    ("height", "max_height", Sense.AT_MOST, "higher than"),
    ("net_area", "max_area", Sense.AT_MOST, "larger than"),
    ("least_side", "least_side", Sense.AT_LEAST, "a side under"),
)


_HEADER = ("Panel", "From left", "From base", "Width x height", "Net area", "Limits")
_WIDTHS = (7, 9, 8, 12, 7, 7)
_FEW = 12  # rows that stand below each other in one column


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One entry for each panel, by elevation from the lower left; many of them in two columns."""
    panels = [panel for layouts in list_layouts(context).values() for panel in layouts[0].panels]
    entries = [_tell(context, panel) for panel in panels]
    if len(entries) <= _FEW:
        return TableView(_HEADER, tuple(entries), tuple(2 * width for width in _WIDTHS))
    half = -(-len(entries) // 2)
    beside = [*entries[half:], *[("",) * len(_HEADER)] * (2 * half - len(entries))]
    lines = tuple((*left, *right) for left, right in zip(entries[:half], beside, strict=True))
    return TableView(_HEADER * 2, lines, _WIDTHS * 2)


def _tell(context: DocumentContext, panel: Panel) -> tuple[Any, ...]:
    """The cells of a panel."""
    judged = [_judge(context, panel)]
    if not panel.is_rectangle:
        shape = name_shape(panel.outline, len(panel.holes))
        judged = [shape, ", least side ", tell_length(context, panel.least_side), "; ", *judged]
    return (
        panel.mark,
        tell_length(context, panel.x),
        tell_length(context, panel.y),
        [tell_length(context, panel.width), " x ", tell_length(context, panel.height)],
        tell_area(context, panel.net_area),
        judged,
    )


def _judge(context: DocumentContext, panel: Panel) -> Any:
    return "; ".join(_find_faults(context, panel)) or "OK"


def _find_faults(context: DocumentContext, panel: Panel) -> Iterator[str]:
    for side, name, sense, words in _JUDGED:
        path = ("panel_limits", name)
        limit = context.project.get(path)
        amount: Fraction = getattr(panel, side)
        unit = "m2" if side == "net_area" else "m"
        if limit is None or compare(Quantity.of(amount, unit), sense, limit) is not Outcome.OUTSIDE:
            continue
        consent = ": architect's consent" if name == "least_side" else ""
        yield f"{words} {context.display(path).text}{consent}"
