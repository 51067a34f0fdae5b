"""The elevations of the project by their marks, and the finish of each."""

from typing import Any

from specgen.documents.color_hold import tell_hold
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks, name_linked, name_member
from specgen.documents.views._areas import sum_areas
from specgen.documents.views._impact_zones import tell_zones

_COLUMNS = (("Elevation", 16), ("Facing", 10), ("Wall", 7), ("Finish", 18), ("Impact class, ASTM E2486", 18))
_SIZES = (("Width x height", 17), ("Net area", 14))


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each elevation, and their sum where there are several; impact classes only where any is given."""
    marks = list_marks(context, "elevations")
    lines = [_line(context, mark) for mark in marks]
    if len(marks) > 1:
        lines.append(("All elevations", "", "", "", [], "", sum_areas(context, marks)))
    columns: tuple[tuple[str, int], ...] = (*_COLUMNS, *_SIZES)
    if not any(line[4] for line in lines):
        columns, lines = (*_COLUMNS[:3], ("Finish", 36), *_SIZES), [(*line[:4], *line[5:]) for line in lines]
    return TableView(tuple(head for head, _ in columns), tuple(lines), tuple(width for _, width in columns))


def _line(context: DocumentContext, mark: str) -> tuple[Any, ...]:
    at = ("elevations", mark)

    def display(name: str) -> DisplayValue:
        return context.display((*at, name))

    return (
        name_member(context, "elevations", mark),
        _facing(display("facing")),
        display("wall"),
        _finish(context, at),
        tell_zones(context, at),
        [display("width"), " x ", display("height")],
        sum_areas(context, (mark,)),
    )


def _facing(facing: DisplayValue) -> list[Any]:
    """`south`, or a bearing in degrees: `340° from north`."""
    return [facing] if facing.open or facing.raw.text.isalpha() else [facing, " from north"]


def _finish(context: DocumentContext, at: tuple[str, ...]) -> list[Any]:
    """The color with its number, `C1 sample board 2, No. 4107`, and whether its heat on this face is still open."""
    color = context.project.get((*at, "color"))
    named = name_linked(context, (*at, "color"), "colors")
    held = tell_hold(context, color.mark) if color is not None else ""
    hold = [f"; {held}"] if held else []
    if color is None or not color.get("number") or not color.get("reference"):
        return [named, *hold]
    return [named, ", No. ", context.display(("colors", color.mark, "number")), *hold]
