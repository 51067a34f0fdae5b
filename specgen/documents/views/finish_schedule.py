"""The elevations of the project by their marks, and the finish of each."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks, name_linked, name_member
from specgen.documents.views._areas import sum_areas


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each elevation, and their sum where there are several."""
    marks = list_marks(context, "elevations")
    lines = [_line(context, mark) for mark in marks]
    if len(marks) > 1:
        lines.append(("All elevations", "", "", "", "", sum_areas(context, marks)))
    header = ("Elevation", "Facing", "Wall", "Finish", "Width x height", "Net area")
    return TableView(header, tuple(lines), (20, 12, 8, 22, 21, 17))


def _line(context: DocumentContext, mark: str) -> tuple[Any, ...]:
    at = ("elevations", mark)

    def display(name: str) -> DisplayValue:
        return context.display((*at, name))

    return (
        name_member(context, "elevations", mark),
        display("facing"),
        display("wall"),
        _finish(context, at),
        [display("width"), " x ", display("height")],
        sum_areas(context, (mark,)),
    )


def _finish(context: DocumentContext, at: tuple[str, ...]) -> list[Any]:
    """The color with its number: `C1 sample board 2, No. 4107`."""
    color = context.project.get((*at, "color"))
    named = name_linked(context, (*at, "color"), "colors")
    if color is None or not color.get("number") or not color.get("reference"):
        return [named]
    return [named, ", No. ", context.display(("colors", color.mark, "number"))]
