"""The hours of a day in which each elevation can be sprayed, by month, and what takes the others of the shift."""

from collections.abc import Iterator
from itertools import groupby
from typing import Any, cast

from specgen.computing.shading import find_shade, is_covered
from specgen.computing.time.usable_hours import DARK, SETTING_UP, SUNNY, is_by_clock, list_usable_months, round_hours
from specgen.documents.composing import Composer
from specgen.documents.context import OF_A_SUM, DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks, name_member
from specgen.documents.views._cells import OPEN, ask_all
from specgen.model.absence import Absent
from specgen.model.schedule import UsableMonth
from specgen.model.typed_views import Elevation
from specgen.model.value_text import value_text, words

_CAUSES = (DARK, SUNNY, SETTING_UP)
_HEADER = ("Elevation", "Month", "Usable, {}", "Usable", "Dark", "Direct sun", "Setup and cleanup")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """A row for each month of the season on each elevation; months alike share one, and so do elevations."""
    alike: dict[str, tuple[list[str], list[tuple[Any, ...]]]] = {}
    for mark in list_marks(context, "elevations"):
        named, *hours = zip(*list_lines(context, mark), strict=True)
        names, _ = alike.setdefault(str(hours), ([], [*zip(*hours, strict=True)]))
        names.append(named[0])
    lines = [
        (", ".join(names) if number == 0 else "", *hours)
        for names, months in alike.values()
        for number, hours in enumerate(months)
    ]
    return set_lines(context, lines or [(context.ask(("elevations",)), "", "", "", "", "", "")])


def set_lines(context: DocumentContext, lines: list[tuple[Any, ...]]) -> TableView:
    """The table of such rows."""
    header = tuple(head.format("by the clock" if is_by_clock(context.project) else "solar time") for head in _HEADER)
    return TableView(header, tuple(lines), (21, 14, 20, 9, 8, 18, 10))


def list_lines(context: DocumentContext, mark: str) -> Iterator[tuple[Any, ...]]:
    """The rows of an elevation."""
    name: str = name_member(context, "elevations", mark)
    face = cast(Elevation, context.project.view(("elevations", mark)))
    try:
        months = list_usable_months(face)
    except Absent as absent:
        yield name, "", ask_all(context, absent.paths), OPEN, "", "", ""
        return
    # Hours without sun on a south face are not to be believed without the cloth or tent that makes them.
    cover = f", {words(find_shade(context.project, mark))}" if is_covered(face) else ""
    for _, alike in groupby(months, _tell):
        group = list(alike)
        spans, usable, dark, sunny, set_up = _tell(group[0])
        hours = DisplayValue(usable, group[0].hours, OF_A_SUM)
        yield name, name_months(group), spans, hours, dark, f"{sunny}{cover}", set_up
        name = ""


def name_months(months: list[UsableMonth]) -> str:
    """`July`, `July to September`."""
    first, last = months[0].month, months[-1].month
    return f"{first:%B}" if first == last else f"{first:%B} to {last:%B}"


def _tell(month: UsableMonth) -> tuple[str, ...]:
    """The cells of a month: the same for months alike."""
    spans = "; ".join(f"{start:%H:%M} to {end:%H:%M}" for start, end in month.spans) or "none"
    lost = dict(month.lost)
    return spans, _tell_hours(month.hours), *(_tell_hours(lost.get(cause, 0)) for cause in _CAUSES)


def _tell_hours(hours: float) -> str:
    return value_text(round_hours(hours))
