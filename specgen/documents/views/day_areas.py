"""The area of each elevation that one day takes, and the days that its gloss takes."""

from math import ceil
from typing import Any

from specgen.computing.coats.day_area import BETWEEN
from specgen.computing.time.usable_hours import round_hours
from specgen.documents.composing import Composer
from specgen.documents.context import OF_A_SUM, DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks, name_member
from specgen.documents.views._cells import OPEN, ask_all
from specgen.model.absence import Absent
from specgen.model.value_text import value_text
from specgen.model.working import Working

_SPRAYING = f"Spraying hours, shortest month, less {BETWEEN:g} h between coats"
_HEADER = ("Elevation", "Net area", _SPRAYING, "Daily area", "Days of gloss, minimum")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each elevation."""
    lines = [_line(context, mark) for mark in list_marks(context, "elevations")]
    lines = lines or [(context.ask(("elevations",)), "", "", "", "")]
    return TableView(_HEADER, tuple(lines), (26, 16, 24, 16, 18))


def _line(context: DocumentContext, mark: str) -> tuple[Any, ...]:
    path = ("elevations", mark)
    name, area = name_member(context, "elevations", mark), context.computed("elevation-area", path)
    try:
        working: Working = context.resolve(path, "day-area")
    except Absent as absent:
        return name, area, ask_all(context, absent.paths), OPEN, OPEN
    hours = next(step.value for step in working.steps if step.symbol == "H")
    told = DisplayValue(value_text(round_hours(hours)), hours, OF_A_SUM)
    return name, area, told, context.computed("day-area", path), _count_days(context, path, working)


def _count_days(context: DocumentContext, path: tuple[str, ...], working: Working) -> Any:
    """The days for both coats of the gloss; none where no day takes any area."""
    try:
        area = context.resolve(path, "elevation-area")
    except Absent:
        return OPEN
    return str(ceil(float(area.result) / float(working.result) - 1e-9)) if working.result else "no day takes both coats"
