"""Builds the files of a laid-out project: drawings of each elevation, lists of panels and joints."""

import json
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from specgen.documents.figures.elevation import draw_elevations
from specgen.documents.figures.elevation_facts import ElevationFacts, find_day_area, read_facts
from specgen.formats.csv_sheet import write_csv
from specgen.formats.dxf import write_dxf
from specgen.formats.png import write_png
from specgen.laying_out.lists import JOINT_COLUMNS, PANEL_COLUMNS, joint_rows, layout_data, list_unit, panel_rows
from specgen.model.layout import ElevationLayout
from specgen.model.problem import Refused, refuse
from specgen.model.project import Project
from specgen.model.sheet import Sheet, SheetColumn
from specgen.resolving.provider import Resolver

_WORDS = ("elevation", "panel", "joint", "kind")


class LayoutFiles(NamedTuple):
    """The files by name, and what the user is told beside them."""

    files: dict[str, bytes]
    notes: tuple[str, ...]


def make_layout_files(
    project: Project, resolve: Resolver, layouts: Sequence[ElevationLayout], sheet: str | None
) -> LayoutFiles:
    """The drawings on a size of sheet, or the smallest that serves, and the lists.

    A form whose library is not installed is left out, and told. Raises Refused where two files would have one name.
    """
    notes: list[str] = []
    files = dict(_write_lists(layouts, project.system))
    drawings = [
        (layout, read_facts(project, layout.elevation, find_day_area(resolve, layout.elevation))) for layout in layouts
    ]
    for name, content in _draw_all(drawings, sheet, notes):
        if name in files:
            raise refuse(f"two drawings would have one name: {name}", "give one of the elevations another mark")
        files[name] = content
    return LayoutFiles(files, tuple(notes))


def _draw_all(
    drawings: list[tuple[ElevationLayout, ElevationFacts]], sheet: str | None, notes: list[str]
) -> Iterator[tuple[str, bytes]]:
    """Each elevation as SVG, as a picture and in real units, as far as the libraries for them are installed."""
    sheets = [drawn for every in draw_elevations(drawings, sheet) for drawn in every]
    yield from ((f"{_stem(drawn.name)}.svg", drawn.svg.encode()) for drawn in sheets)
    try:
        for drawn in sheets:
            yield f"{_stem(drawn.name)}.png", write_png(drawn.svg, drawn.width)
    except Refused as refused:
        notes.append(_tell(refused, "PNG"))
    try:
        for layout, facts in drawings:
            yield f"{_stem(layout.elevation)}.dxf", write_dxf(layout, facts)
    except Refused as refused:
        notes.append(_tell(refused, "DXF"))


def _tell(refused: Refused, form: str) -> str:
    return f"no {form} was written: {refused}"


def _stem(mark: str) -> str:
    """The name of a file for a mark, which may hold a slash or begin with a dot."""
    return mark.replace("/", "-").lstrip(".") or "elevation"


def _write_lists(layouts: Sequence[ElevationLayout], system: str) -> Iterator[tuple[str, bytes]]:
    unit = list_unit(system)
    yield "panels.csv", _write_table(PANEL_COLUMNS, panel_rows(layouts, system), unit)
    yield "joints.csv", _write_table(JOINT_COLUMNS, joint_rows(layouts, system), unit)
    data = layout_data(layouts, system)
    yield "layout.json", (json.dumps(data, indent=1, ensure_ascii=False) + "\n").encode()


def _write_table(columns: Sequence[str], rows: list[list[str | float | int]], unit: str) -> bytes:
    """A table for spreadsheets; the head of each column of figures names its unit."""
    titles = tuple(SheetColumn(_head(column, unit), len(column)) for column in columns)
    return write_csv(Sheet("", titles, tuple(map(tuple, rows)), ""))


def _head(column: str, unit: str) -> str:
    if column in _WORDS:
        return column
    return f"{column.replace('_', ' ')} {'sq ' if column.endswith('area') else ''}{unit}"
