"""Where the weather was not read for too long while work went on at a face."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from datetime import date, datetime, timedelta
from fractions import Fraction
from typing import NamedTuple

from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.recording.elapsed import elapsed_hours
from specgen.recording.entry_kinds import is_pass, is_reading
from specgen.recording.timeline import order_of


class Gap(NamedTuple):
    """Hours without a reading, and the field of the entry at which they end.

    None for a reading that does not tell its place or time, so that it is not known what gap it ends.
    """

    hours: Fraction
    field: str = ""  # its last name


# The gaps of a face on a day, by the number of the entry at which each ends.
Gaps = Mapping[tuple[str, date | None], Mapping[int, Gap]]
_UNKNOWN = Gap(Fraction(0))


def find_reading_gaps(project: Project, most: Fraction) -> Gaps:
    """The gaps of more than so many hours; looked for once.

    Work goes on from the first reading of a day's work on a face to its end. A gap ends at the next reading, the last
    one where the work ends.
    """
    return project.remember(("reading gaps", most), lambda: _find_gaps(project, most))


def _find_gaps(project: Project, most: Fraction) -> Gaps:
    by_face: dict[str, list[Entry]] = defaultdict(list)
    found: dict[tuple[str, date | None], dict[int, Gap]] = defaultdict(dict)
    for entry in project.records.of("log"):
        if entry.began is not None and entry.get("elevation"):
            by_face[entry.values["elevation"]].append(entry)
        elif is_reading(entry):
            found[_day_of(entry)][entry.number] = _UNKNOWN
    for entries in by_face.values():
        for day in _split_days(sorted(entries, key=order_of)):
            for entry, gap in _list_gaps(project, day, most):
                found[_day_of(entry)][entry.number] = gap
    return found


def _day_of(entry: Entry) -> tuple[str, date | None]:
    return entry.get("elevation") or "", entry.get("date")


def _split_days(entries: Iterable[Entry]) -> Iterator[list[Entry]]:
    """The entries of each day's work; what a shift does after midnight belongs to the day on which it began."""
    day: list[Entry] = []
    end = datetime.min
    for entry in entries:
        if day and entry.values["date"] != day[0].values["date"] and _moment(entry) > end:
            yield day
            day, end = [], datetime.min
        end = max(end, _end(entry))
        day.append(entry)
    if day:
        yield day


def _list_gaps(project: Project, day: list[Entry], most: Fraction) -> Iterator[tuple[Entry, Gap]]:
    readings = [entry for entry in day if is_reading(entry)]
    passes = [entry for entry in day if is_pass(entry)]
    for earlier, later in zip(readings, readings[1:], strict=False):
        hours = elapsed_hours(project, _moment(earlier), _moment(later))
        if hours > most and _goes_on(passes, _moment(earlier), _moment(later), most):
            yield later, Gap(hours, "started_at")
    last = max(passes, key=_end, default=None)
    if readings and last is not None:
        hours = elapsed_hours(project, _moment(readings[-1]), _end(last))
        if hours > most:
            yield last, Gap(hours, "ended_at")


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
