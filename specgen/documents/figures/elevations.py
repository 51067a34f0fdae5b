"""The elevations with their joint layout, as a document shows them: sheets of its own page, to scale."""

from specgen.documents.context import DocumentContext
from specgen.documents.figures.elevation import DrawnSheet, draw_elevations
from specgen.documents.figures.elevation_facts import find_day_area, read_facts
from specgen.documents.layouts import list_layouts
from specgen.documents.marks import name_member
from specgen.model.block import Figure, Text


def draw(context: DocumentContext) -> tuple[Figure, ...]:
    """The sheets of every elevation of which the layout is known, numbered through."""
    layouts = {mark: every[0] for mark, every in list_layouts(context).items()}
    facts = (read_facts(context.project, mark, find_day_area(context.resolve, mark)) for mark in layouts)
    figures: list[Figure] = []
    for mark, sheets in zip(layouts, draw_elevations(zip(layouts.values(), facts, strict=True), "page"), strict=True):
        name = name_member(context, "elevations", mark)
        figures += [_set_figure(sheet, _title(name, number, len(sheets))) for number, sheet in enumerate(sheets, 1)]
    return tuple(figures)


def _title(name: str, number: int, total: int) -> str:
    return f"Elevation {name}" + (f", part {number} of {total}" if total > 1 else "")


def _set_figure(sheet: DrawnSheet, title: str) -> Figure:
    return Figure("elevations", (Text(title),), sheet.svg, sheet.alt, sheet.width, sheet.height)
