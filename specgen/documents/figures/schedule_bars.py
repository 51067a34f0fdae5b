"""The schedule as bars: the whole job on the first sheet, then each elevation step by step."""

from collections.abc import Callable, Iterator
from datetime import date, datetime, time, timedelta
from functools import partial
from itertools import groupby

from specgen.computing.calendars import find_work_days
from specgen.documents.context import DocumentContext
from specgen.documents.figures._bar_sheet import MOST_ROWS, Bar, BarRow, BarSheet
from specgen.documents.marks import name_member
from specgen.documents.schedule import BEFORE_WORK, StepRow, find_schedule, list_step_rows, tell_day, tell_moment
from specgen.model.block import Figure
from specgen.model.schedule import Activity
from specgen.model.typed_views import root_of
from specgen.scheduling.before_work import ACCEPTANCE, MOCKUP

_WAIT = ".wait."  # in the mark of a planned wait


def draw(context: DocumentContext) -> tuple[Figure, ...]:
    """The sheets of the schedule; none where no activity can be dated."""
    schedule = find_schedule(context)
    if schedule is None:
        return ()
    rows, year = list_step_rows(schedule, context), schedule.activities[0].start.year
    sheets = list(_list_sheets(context, rows))
    days = find_work_days(root_of(context.project.view(())))

    def is_off(day: date) -> bool:
        return not days.is_worked(day)

    return tuple(
        BarSheet(tuple(_leave_out(row, is_off) for row in sheet), is_off).finish(
            _title(sheet, number, len(sheets)), _tell(sheet, year)
        )
        for number, sheet in enumerate(sheets, 1)
    )


def _leave_out(row: BarRow, is_off: Callable[[date], bool]) -> BarRow:
    """The same with no work drawn on days off."""
    return row._replace(bars=tuple(part for bar in row.bars for part in _cut(bar, is_off)))


def _cut(bar: Bar, is_off: Callable[[date], bool]) -> tuple[Bar, ...]:
    """The parts of a stretch of work on either side of days off; what else goes on by the clock stays whole."""
    if bar.kind != "work":
        return (bar,)
    count = (bar.end.date() - bar.start.date()).days + 1
    worked = [day for day in (bar.start.date() + timedelta(days=n) for n in range(count)) if not is_off(day)]
    parts: list[Bar] = []
    for day in worked:
        midnight = datetime.combine(day, time())
        start, end = max(bar.start, midnight), min(bar.end, midnight + timedelta(days=1))
        if parts and parts[-1].end == start:
            parts[-1] = Bar(bar.kind, parts[-1].start, end)
        else:
            parts.append(Bar(bar.kind, start, end))
    return tuple(parts) or (bar,)


def _list_sheets(context: DocumentContext, rows: tuple[StepRow, ...]) -> Iterator[list[BarRow]]:
    """The rows sheet by sheet: all on one where they fit, else the whole job, then as many elevations as fit."""
    faces = [_list_face(context, mark, list(group)) for mark, group in groupby(rows, lambda row: row.elevation) if mark]
    behind = [_make_row(row) for row in rows if not row.elevation and row.activities[0].kind == "weather"]
    project = [_make_row(row) for row in rows if not row.elevation][: -len(behind) or None]
    if len(project) + sum(map(len, faces)) + len(behind) <= MOST_ROWS:
        yield [*project, *(row for face in faces for row in face), *behind]
        return
    everything = [*project, *(_sum_up(face) for face in faces), *behind]
    yield from (everything[first : first + MOST_ROWS] for first in range(0, len(everything), MOST_ROWS))
    sheet: list[BarRow] = []
    for face in faces:
        if sheet and len(sheet) + len(face) > MOST_ROWS:
            yield sheet
            sheet = []
        sheet += face
    yield sheet


def _list_face(context: DocumentContext, mark: str, rows: list[StepRow]) -> list[BarRow]:
    head = BarRow(name_member(context, "elevations", mark), head=True)
    return [head, *map(_make_row, rows)]


def _make_row(row: StepRow) -> BarRow:
    first = row.activities[0]
    whole = first.kind in BEFORE_WORK or first.mark == ACCEPTANCE
    return BarRow(row.title, row.governs, tuple(map(_make_bar, row.activities)), whole_days=whole)


def _make_bar(one: Activity) -> Bar:
    kind = "open" if one.kind in BEFORE_WORK else "wait" if _WAIT in one.mark else one.kind
    if one.mark not in (MOCKUP, ACCEPTANCE) or one.end.time() != time():
        return Bar(kind, one.start, one.end)
    # The midnight behind the last day is still that day, as the chain of dates tells it.
    last = one.end - timedelta(minutes=1)
    return Bar(kind, min(one.start, last), last)


def _sum_up(face: list[BarRow]) -> BarRow:
    """An elevation in one row, from its first work to its last release."""
    bars = [bar for row in face for bar in row.bars]
    whole = Bar("whole", min(bar.start for bar in bars), max(bar.end for bar in bars))
    return BarRow(face[0].name, bool([row for row in face if row.governs]), (whole,))


def _title(sheet: list[BarRow], number: int, total: int) -> str:
    heads = [row.name for row in sheet if row.head]
    told = ", ".join(heads) if heads and (number > 1 or total == 1) else "whole job"
    return f"Schedule, {told}{f', sheet {number} of {total}' if total > 1 else ''}"


def _tell(sheet: list[BarRow], year: int) -> str:
    """The dates of the sheet, for those who do not see it."""
    told = []
    for row in sheet:
        if row.head:
            told.append(f"{row.name}:")
            continue
        start, end = min(bar.start for bar in row.bars), max(bar.end for bar in row.bars)
        tell = partial(tell_day, year=year) if row.whole_days else partial(tell_moment, year=year)
        span = " to ".join(dict.fromkeys((tell(start), tell(end))))
        told.append(f"{row.name}{' (governs)' if row.governs else ''}, {span};")
    return f"Bars over dates of {year}. {' '.join(told).removesuffix(';')}."
