"""What is done when: each step on each elevation, with its crew, its drying, and how far it can move."""

from datetime import datetime, timedelta
from typing import Any, cast

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import name_member
from specgen.documents.schedule import (
    BEFORE_WORK,
    StepRow,
    find_schedule,
    list_step_rows,
    list_untold,
    tell_day,
    tell_moment,
    tell_refusal,
)
from specgen.documents.views._cells import OPEN, ask_all
from specgen.model.typed_views import Elevation
from specgen.model.value_text import count
from specgen.scheduling.before_work import ACCEPTANCE, COATS, MOCKUP, REVIEW, order_mark
from specgen.scheduling.viewing_hours import VIEWED, list_viewing_months

GOVERNS = "governs"
_TOLD_BEFORE = (REVIEW, MOCKUP, COATS, ACCEPTANCE, order_mark("", "sample"))
_LEFT_OUT = "no output given"
_WIDTHS = (9, 22, 6, 15, 15, 15, 15, 8)


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each activity of the project, and for each step of an elevation."""
    schedule = find_schedule(context)
    if schedule is None:
        return TableView(("Activity", "Needed"), (("Schedule", tell_untold(context)),), (25, 75))
    taken = [row for row in list_step_rows(schedule, context) if not _is_told_before(row)]
    year = schedule.activities[0].start.year
    named = [None, *(row.elevation for row in taken)]
    heads = [_name(context, row, above) for row, above in zip(taken, named, strict=False)]
    moments = (f"Start, {year}", f"End, {year}", "Dry or cured", "Earliest release")
    header = ("Elevation", "Activity", "Crew", *moments, "Float")
    lines = [
        (head, *_line(context, row, year, row.title in schedule.untimed))
        for head, row in zip(heads, taken, strict=True)
    ]
    if schedule.missing:
        lines.append(("Not scheduled", tell_untold(context), "", OPEN, OPEN, "", "", ""))
    return TableView(header, tuple(lines), _WIDTHS)


def _is_told_before(row: StepRow) -> bool:
    """Whether the chain of dates tells it, with a float of its own: review, sample color, and mockup."""
    return not row.elevation and row.activities[0].mark.endswith(_TOLD_BEFORE)


def tell_untold(context: DocumentContext) -> Any:
    """What must still be given for the schedule, else why it cannot be made."""
    paths = list_untold(context)
    if not paths:
        return tell_refusal(context)
    return ask_all(context, paths)


def _name(context: DocumentContext, row: StepRow, above: str | None) -> str:
    """The elevation, below a row of the same one its mark: a row is read alone, on whatever page it stands."""
    if not row.elevation:
        return "Project"
    return row.elevation if row.elevation == above else name_member(context, "elevations", row.elevation)


def _tell_ends(row: StepRow, ends: tuple[datetime, datetime], year: int) -> tuple[str, str]:
    """Start and end; those of whole days without an hour."""
    if row.activities[0].kind in BEFORE_WORK:
        return tell_day(ends[0].date(), year), tell_day(ends[1].date(), year)
    return tell_moment(ends[0], year), tell_moment(ends[1], year)


def tell_float(row: StepRow) -> str:
    """`governs`, `less than 1 day`, `3 days`."""
    days = row.spare // timedelta(days=1)
    told = count(days, "day") if days else "less than 1 day"
    return GOVERNS if row.governs else told


def _tell_title(row: StepRow, year: int) -> str:
    """The step; of one worked at in several passes the days on which they begin, as the crew is elsewhere between."""
    begun = [one.start.date() for one in row.activities if one.kind == "work"]
    days = ", ".join(tell_day(day, year) for day in dict.fromkeys(begun))
    return f"{row.title}: {days}" if len(begun) > 1 else row.title


def _tell_hold(context: DocumentContext, row: StepRow, end: datetime, year: int) -> str:
    """When a hold ends; of a viewing in a month without an hour for it the day, as its hour is outside the shift."""
    step = row.activities[0].step
    if step not in VIEWED or not row.elevation:
        return tell_moment(end, year)
    months = list_viewing_months(cast(Elevation, context.project.view(("elevations", row.elevation))), step)
    no_hour = months and not months[end.month - 1].spans
    return tell_day(end.date(), year) if no_hour else tell_moment(end, year)


def _line(context: DocumentContext, row: StepRow, year: int, untimed: bool) -> tuple[Any, ...]:
    """The cells of a step; of one that a crew does, and for which no output is given, that its time is left out."""
    work, dry = row.span("work", "weather", *BEFORE_WORK), row.span("drying")
    hold = row.span("hold")
    return (
        _tell_title(row, year),
        row.crew,
        *(_tell_ends(row, work, year) if work else ("", _LEFT_OUT if untimed and row.crew else "")),
        tell_moment(dry[1], year) if dry else "",
        _tell_hold(context, row, hold[1], year) if hold else "",
        tell_float(row),
    )
