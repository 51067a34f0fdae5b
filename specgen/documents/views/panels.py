"""Every panel between joints: place, size, net area, its shape where it is no rectangle, limits, day and batch."""

from collections.abc import Callable, Iterator
from fractions import Fraction
from itertools import takewhile
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.figures.elevation_facts import find_day_area
from specgen.documents.figures.elevation_geometry import Geometry
from specgen.documents.layouts import list_layouts, name_shape, tell_area, tell_consent, tell_legs, tell_length
from specgen.documents.ledge_strips import is_cut_narrow, list_ledge_cuts
from specgen.documents.takeoff import number_batches
from specgen.model.layout import ElevationLayout, Panel
from specgen.quantities.comparison import Outcome, Sense, compare
from specgen.quantities.quantity import Quantity

_JUDGED = (
    ("width", "max_width", Sense.AT_MOST, "wider than"),
    ("height", "max_height", Sense.AT_MOST, "higher than"),
    ("net_area", "max_area", Sense.AT_MOST, "larger than"),
    ("least_side", "least_side", Sense.AT_LEAST, "a side under"),
)


_HEADER = ("Panels", "From left", "From base", "Width x height", "Each, net", "Limits", "Day", "Batch")
_WIDTHS = (19, 8, 20, 13, 8, 22, 4, 6)


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for the panels of one size that stand above each other, by elevation from the lower left."""
    lines = []
    for mark, layouts in list_layouts(context).items():
        tell_day, batch = _make_days(context, mark, layouts[0]), number_batches(context)[mark]
        for group in _group(context, mark, layouts[0]):
            lines.append((*_tell(context, mark, group), tell_day(group[0]), batch))
    return TableView(_HEADER, tuple(lines), _WIDTHS)


def _group(context: DocumentContext, mark: str, layout: ElevationLayout) -> list[list[Panel]]:
    """The panels of the same place across, size and shape, cut by no ledge or by the same, from the base up."""
    found: dict[tuple[Any, ...], list[Panel]] = {}
    for panel in sorted(layout.panels, key=_order):
        outline = tuple((x, y - panel.y) for x, y in panel.outline)
        holes = tuple(tuple((x, y - panel.y) for x, y in hole) for hole in panel.holes)
        found.setdefault((outline, holes, list_ledge_cuts(context, mark, panel)), []).append(panel)
    return [*found.values()]


def _order(panel: Panel) -> tuple[int, str, Fraction]:
    """By the letters of the column, A to Z before AA, then from the base up."""
    column = "".join(takewhile(str.isalpha, panel.mark.rpartition("-")[2]))
    return len(column), column, panel.y


def _make_days(context: DocumentContext, mark: str, layout: ElevationLayout) -> Callable[[Panel], str]:
    """What tells the day on which a panel is sprayed; `site` where days are set there."""
    area = find_day_area(context.resolve, mark)
    days = Geometry(layout, None if area is None else area.to("m2")).days

    def tell_day(panel: Panel) -> str:
        middle = float(panel.x + panel.width / 2)
        return next((str(n) for n, day in enumerate(days, 1) if day.start <= middle <= day.end), "site")

    return tell_day


def _tell(context: DocumentContext, mark: str, group: list[Panel]) -> tuple[Any, ...]:
    """The cells of panels of one size; the heights above the base in the order of their marks."""
    panel = group[0]
    judged: list[Any] = [*_tell_ledges(context, mark, panel), "; ".join(_find_faults(context, mark, panel)) or "OK"]
    if not panel.is_rectangle:
        shape = [name_shape(panel), *tell_legs(context, panel)]
        judged = [*shape, ", least side ", tell_length(context, panel.least_side), "; ", *judged]
    marks = [panel.mark, *(other.mark.rpartition("-")[2] for other in group[1:])]
    heights = [part for other in group for part in (", ", tell_length(context, other.y))]
    return (
        ", ".join(marks),
        tell_length(context, panel.x),
        heights[1:],
        [tell_length(context, panel.width), " x ", tell_length(context, panel.height)],
        tell_area(context, panel.net_area),
        judged,
    )


def _tell_ledges(context: DocumentContext, mark: str, panel: Panel) -> Iterator[Any]:
    """`LG1 across it leaves 4 in below, 2 ft 11 in above; `: what ledges leave of a panel."""
    for cut in list_ledge_cuts(context, mark, panel):
        yield f"{cut.mark} {'across' if cut.across else 'cuts into'} it"
        strips = [(cut.below, "below"), (cut.above, "above")] if cut.across else []
        left = [(tell_length(context, height), f" {side}") for height, side in strips if height]
        yield from (part for number, strip in enumerate(left) for part in (", " if number else " leaves ", *strip))
        yield "; "


def _find_faults(context: DocumentContext, mark: str, panel: Panel) -> Iterator[str]:
    for side, name, sense, words in _JUDGED:
        path = ("panel_limits", name)
        limit = context.project.get(path)
        amount: Fraction = getattr(panel, side)
        unit = "m2" if side == "net_area" else "m"
        cut = name == "least_side" and is_cut_narrow(context, mark, panel)
        if limit is None or (not cut and compare(Quantity.of(amount, unit), sense, limit) is not Outcome.OUTSIDE):
            continue
        agreed = f": {tell_consent(context, mark)}" if name == "least_side" else ""
        yield f"{words} {context.display(path).text}{agreed}"
