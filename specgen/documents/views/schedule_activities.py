"""What is done when: each step on each elevation, with its crew, its drying, and how far it can move."""

from datetime import datetime
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import name_member
from specgen.documents.schedule import (
    BEFORE_WORK,
    StepRow,
    find_schedule,
    is_short,
    list_step_rows,
    list_untold,
    tell_day,
    tell_moment,
    tell_refusal,
)
from specgen.documents.views._cells import OPEN, ask_all
from specgen.model.value_text import count

GOVERNS = "governs"
_WIDTHS = (9, 22, 6, 15, 15, 15, 15, 8)


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each activity of the project, and for each step of an elevation."""
    schedule = find_schedule(context)
    if schedule is None:
        return TableView(("Activity", "Needed"), (("Schedule", tell_untold(context)),), (25, 75))
    taken = [row for row in list_step_rows(schedule, context) if not (row.elevation and is_short(context))]
    year = schedule.activities[0].start.year
    named = [None, *(row.elevation for row in taken)]
    heads = [_name(context, row, above) for row, above in zip(taken, named, strict=False)]
    header = ("Elevation", "Activity", "Crew", f"Start, {year}", "End", "Dry, wait over", "Release", "Float")
    lines = [(head, *_line(row, year)) for head, row in zip(heads, taken, strict=True)]
    if schedule.missing and not is_short(context):
        lines.append(("Not scheduled", tell_untold(context), "", OPEN, OPEN, "", "", ""))
    return TableView(header, tuple(lines), _WIDTHS)


def tell_untold(context: DocumentContext) -> Any:
    """What must still be given for the schedule, else why it cannot be made."""
    paths = list_untold(context)
    return ask_all(context, paths) if paths else tell_refusal(context)


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


def _line(row: StepRow, year: int) -> tuple[Any, ...]:
    work, dry = row.span("work", "weather", *BEFORE_WORK), row.span("drying")
    hold = row.span("hold")
    return (
        row.title,
        row.crew,
        *(_tell_ends(row, work, year) if work else ("", "")),
        tell_moment(dry[1], year) if dry else "",
        tell_moment(hold[1], year) if hold else "",
        GOVERNS if row.governs else count(row.slack, "day"),
    )
