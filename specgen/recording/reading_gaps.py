"""Where the weather was not read for too long while work went on at a face."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime, timedelta
from fractions import Fraction
from typing import NamedTuple

from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.recording.elapsed import elapsed_hours
from specgen.recording.entry_kinds import is_pass, is_reading
from specgen.recording.timeline import order_of

# By so much real hours may be more than the clock tells.
_CLOCK_CHANGE = timedelta(hours=2)


class Gap(NamedTuple):
    """Hours without a reading, and the field of the entry at which they end."""

    hours: Fraction
    field: str  # its last name


def find_reading_gaps(project: Project, most: Fraction) -> Mapping[int, Gap]:
    """The gaps of more than so many hours, by the number of the log entry at which each ends; looked for once.

    Work goes on from the first reading of a day's work on a face to its end. A gap ends at the next reading, the last
    one where the work ends.
    """
    return project.remember(("reading gaps", most), lambda: _find_gaps(project, most))


def _find_gaps(project: Project, most: Fraction) -> dict[int, Gap]:
    by_face: dict[str, list[Entry]] = {}
    for entry in project.records.of("log"):
        if entry.began is not None and entry.get("elevation"):
            by_face.setdefault(entry.values["elevation"], []).append(entry)
    days = (day for entries in by_face.values() for day in _split_days(sorted(entries, key=order_of)))
    return {number: gap for day in days for number, gap in _find_gaps_of_day(project, day, most)}


def _split_days(entries: Iterable[Entry]) -> Iterator[list[Entry]]:
    """The entries of each day's work; what a shift does after midnight belongs to the day on which it began."""
    day: list[Entry] = []
    end = datetime.min
    for entry in entries:
        if day and entry.values["date"] != day[0].values["date"] and _moment(entry) > end:
            yield day
            day = []
        end = max(end, _end(entry)) if day else _end(entry)
        day.append(entry)
    if day:
        yield day


def _find_gaps_of_day(project: Project, day: list[Entry], most: Fraction) -> Iterator[tuple[int, Gap]]:
    readings = [entry for entry in day if is_reading(entry)]
    passes = [entry for entry in day if is_pass(entry)]
    moments = list(map(_moment, readings))
    surely = timedelta(hours=float(most)) - _CLOCK_CHANGE
    for since, until, later in zip(moments, moments[1:], readings[1:], strict=False):
        if until - since <= surely:
            continue
        hours = elapsed_hours(project, since, until)
        if hours > most and _goes_on(passes, since, until, most):
            yield later.number, Gap(hours, "started_at")
    last = max(passes, key=_end, default=None)
    if readings and last is not None:
        hours = elapsed_hours(project, _moment(readings[-1]), _end(last))
        if hours > most:
            yield last.number, Gap(hours, "ended_at")


def _goes_on(passes: list[Entry], earlier: datetime, later: datetime, most: Fraction) -> bool:
    """Whether work went on when the next reading was due, as far as it is told when there was work."""
    due = earlier + timedelta(hours=float(most))
    return not passes or any(_moment(one) < later and _end(one) > due for one in passes)


def _moment(entry: Entry) -> datetime:
    assert entry.began is not None
    return entry.began


def _end(entry: Entry) -> datetime:
    assert entry.ended is not None
    return entry.ended
