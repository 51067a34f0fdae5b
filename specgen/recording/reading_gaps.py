"""Where the weather was not read for too long while work went on at a face."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime, timedelta
from fractions import Fraction
from typing import NamedTuple

from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.recording.elapsed import elapsed_hours
from specgen.recording.entry_kinds import is_pass, is_reading
from specgen.recording.history import history_of

# By so much real hours may be more than the clock tells.
_CLOCK_CHANGE = timedelta(hours=2)
# A reading no longer before the work is one of it: common practice, no source.
_BEFORE_WORK = timedelta(hours=1)


class Gap(NamedTuple):
    """Hours of work without a reading, and the field of the entry at which they end."""

    hours: Fraction
    field: str  # its last name


class _Timed(NamedTuple):
    """An entry, and when it began; that is looked at more than once."""

    began: datetime
    entry: Entry

    @property
    def ended(self) -> datetime:
        """When it ended; its beginning where that is not told."""
        return (self.entry.ended or self.began) if "ended_at" in self.entry.values else self.began


def find_reading_gaps(project: Project, most: int) -> Mapping[int, Gap]:
    """The gaps of more than so many hours, by the number of the log entry at which each ends; looked for once.

    Work goes on from the first reading of a day's work on a face to its end, and no longer than its passes or the shift
    tell. A gap ends at the next reading, the last one where the work ends.
    """
    return project.remember(("reading gaps", most), lambda: _find_gaps(project, most))


def _find_gaps(project: Project, most: int) -> dict[int, Gap]:
    by_face: dict[str, list[_Timed]] = {}
    for order, entry in history_of(project).list_log():
        values = entry.values
        if "elevation" in values and "date" in values and "started_at" in values:
            by_face.setdefault(values["elevation"], []).append(_Timed(order.began, entry))
    days = (day for entries in by_face.values() for day in _split_days(entries))
    return {number: gap for day in days for number, gap in _find_gaps_of_day(project, day, most)}


def _split_days(entries: Iterable[_Timed]) -> Iterator[list[_Timed]]:
    """The entries of each day's work; what a shift does after midnight belongs to the day on which it began."""
    day: list[_Timed] = []
    end, on = datetime.min, None
    for one in entries:
        if day and one.entry.values["date"] != on and one.began > end:
            yield day
            day = []
        if not day:
            end, on = one.ended, one.entry.values["date"]
        end = max(end, one.ended)
        day.append(one)
    if day:
        yield day


def _find_gaps_of_day(project: Project, day: list[_Timed], most: int) -> Iterator[tuple[int, Gap]]:
    readings = [one for one in day if is_reading(one.entry)]
    passes = [one for one in day if is_pass(one.entry)]
    surely = timedelta(hours=most) - _CLOCK_CHANGE
    for one, later in zip(readings, readings[1:], strict=False):
        if later.began - one.began > surely:
            hours = _count_work(project, passes, one.began, later.began)
            if hours > most:
                yield later.entry.number, Gap(hours, "started_at")
    last = max(passes, key=lambda one: one.ended, default=None)
    if readings and last is not None and last.ended - readings[-1].began > surely:
        hours = _count_work(project, passes, readings[-1].began, last.ended)
        if hours > most:
            yield last.entry.number, Gap(hours, "ended_at")


def _count_work(project: Project, passes: list[_Timed], earlier: datetime, later: datetime) -> Fraction:
    """Hours without a reading between two moments while there was work: by its passes, else the shift, else all.

    A reading shortly before the work is one of it; from one of the night before, only the work itself counts.
    """
    if passes:
        reached = [one for one in passes if one.began < later and one.ended > earlier]
        spans = [(min(one.began for one in reached), max(one.ended for one in reached))] if reached else []
    else:
        spans = list(_list_shifts(project, earlier, later)) or [(earlier, later)]
    worked = ((start, end) for start, end in spans if start < later)
    parts = ((earlier if start - earlier <= _BEFORE_WORK else start, min(later, end)) for start, end in worked)
    return sum((elapsed_hours(project, start, end) for start, end in parts if start < end), Fraction(0))


def _list_shifts(project: Project, earlier: datetime, later: datetime) -> Iterator[tuple[datetime, datetime]]:
    """The shifts of the days between two moments, and that of the day before; none where the project names none."""
    start, length = (project.get(("schedule", name)) for name in ("shift_start", "shift_hours"))
    if start is None or length is None:
        return
    for day in range(-1, (later.date() - earlier.date()).days + 1):
        begin = datetime.combine(earlier.date() + timedelta(days=day), start)
        yield begin, begin + timedelta(hours=float(length))
