"""What a project says of its time, to be compared: fit days and usable hours by elevation and month, and its end."""

from collections.abc import Iterator
from typing import cast

from specgen.computing.time.usable_hours import list_usable_months, round_hours
from specgen.documents.context import DocumentContext
from specgen.documents.marks import list_marks
from specgen.documents.schedule import SPRAYED, find_schedule
from specgen.documents.views.fit_days import FitMonth, list_fit_months
from specgen.model.absence import Absent
from specgen.model.schedule import UsableMonth
from specgen.model.state import Figure, Said, Told
from specgen.model.typed_views import Elevation
from specgen.model.value_text import long_date, value_text
from specgen.quantities.format import format_decimal


def list_times(context: DocumentContext) -> Iterator[tuple[Told, Figure]]:
    """The fit days of each elevation by month, the day its last gloss is dry, and the end of the work."""
    fit = {one.month: one for one in list_fit_months(context)}
    for mark in list_marks(context, "elevations") if fit else ():
        try:
            months = list_usable_months(cast(Elevation, context.project.view(("elevations", mark))))
        except Absent:
            continue
        for month in months:
            name, text = f"{month.month:%B %Y}", _tell(month, fit[month.month])
            yield (f"fit days, {name}", f"elevations.{mark}"), Figure(Said(text, text), f"Fit days, {name}")
    yield from _list_ends(context)


def _tell(month: UsableMonth, fit: FitMonth) -> str:
    """`10.6 days of 9 h`; no days where none of the hours can be used."""
    hours = value_text(round_hours(month.hours))
    if not month.hours:
        return "none"
    return hours if fit.unfit is None else f"{format_decimal(fit.worked - fit.unfit, 3, 1)} days of {hours}"


def _list_ends(context: DocumentContext) -> Iterator[tuple[Told, Figure]]:
    schedule = find_schedule(context)
    if schedule is None or schedule.missing:
        return
    sprayed = [one.end for one in schedule.activities if one.step in SPRAYED]
    ends = {"Gloss dry on the last elevation": max(sprayed, default=None), "End of the work": schedule.end}
    for title, end in ends.items():
        if end is not None:
            told = long_date(end.date())
            yield (title.lower(), ""), Figure(Said(told, told), title)
