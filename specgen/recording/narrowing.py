"""The part of a site record that is asked about: one elevation, one day, or both; what is found in it alone."""

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import date
from typing import NamedTuple

from specgen.model.problem import refuse
from specgen.model.record import OF_READINGS, Entry, RecordFile, Records, day_of
from specgen.model.record_judgment import MockupCount, ReadingList, ReadingsAlike, ReadingState, RecordJudgment
from specgen.reading.records.gathering import locate_entry

_UNSETTLED = (ReadingState.MISSING, ReadingState.NOT_EVALUATED)


class Part(NamedTuple):
    """An elevation and a day; where neither is told, the whole record."""

    elevation: str = ""
    on: date | None = None

    @property
    def is_whole(self) -> bool:
        """Whether nothing is left out."""
        return not self.elevation and self.on is None

    def holds(self, entry: Entry) -> bool:
        """Whether an entry is of the part; one that does not tell where or when it was is not."""
        if self.elevation and entry.get("elevation") != self.elevation:
            return False
        return self.on is None or day_of(entry) == self.on

    def may_hold(self, entry: Entry) -> bool:
        """Whether an entry is not of the part only because it does not tell where or when it was."""
        elevation, day = entry.get("elevation") or self.elevation, day_of(entry) or self.on
        return not self.holds(entry) and elevation == self.elevation and (self.on is None or day == self.on)


class ToldRecord(NamedTuple):
    """The entries of a record, or of a part of it, and what is found in them."""

    records: Records
    judgment: RecordJudgment


def list_days(records: Records) -> list[date]:
    """The days of which a record tells, in their order."""
    days = {day_of(entry) for name in OF_READINGS for entry in records.of(name)}
    return sorted(day for day in days if day is not None)


def refuse_other_day(records: Records, on: date) -> None:
    """Raise Refused for a day of which a record has no entry, with the days beside it that it has."""
    days = list_days(records)
    if on in days:
        return
    at = bisect_left(days, on)
    near = [day.isoformat() for day in days[max(at - 1, 0) : at + 1]]
    raise refuse(f"the record has no entry of {on.isoformat()}", f"nearest: {', '.join(near)}" if near else "")


def narrow(whole: ToldRecord, part: Part) -> ToldRecord:
    """The entries of a part of a record and what is found in them, each nonconformance under its own number."""
    if part.is_whole:
        return whole
    judgment = whole.judgment
    found = tuple(one for one in judgment.nonconformances if part.holds(one.entry))
    alike = tuple(one for one in (_narrow_alike(one, part) for one in judgment.alike) if one.entries)
    entries = {name: tuple(filter(part.holds, whole.records.of(name))) for name in OF_READINGS}
    answers = {one.disposition.number: one.disposition for one in found if one.disposition is not None}
    entries["disposition"] = tuple(answers[number] for number in sorted(answers))
    narrowed = replace(
        judgment,
        nonconformances=found,
        counts={state: sum(len(one.entries) for one in alike if one.state is state) for state in ReadingState},
        unsettled=ReadingList([one for one in alike if one.state in _UNSETTLED]),
        alike=alike,
        unmatched=(),
        unplaced=(),
        mockup=MockupCount(),
    )
    return ToldRecord(_narrow_records(whole.records, entries), narrowed)


def _narrow_alike(one: ReadingsAlike, part: Part) -> ReadingsAlike:
    return one._replace(entries=tuple(filter(part.holds, one.entries)))


def _narrow_records(records: Records, entries: Mapping[str, tuple[Entry, ...]]) -> Records:
    """The records with these entries alone, the files that hold any, and what is told of these files and rows."""
    places = [entry.place for listed in entries.values() for entry in listed]
    counts = Counter(place.file for place in places)
    files = tuple(RecordFile(one.name, one.digest, counts[one.name]) for one in records.files if one.name in counts)
    rows = {*((name, 0) for name in counts), *(locate_entry(place)[:2] for place in places)}
    remarks = tuple(one for one in records.remarks if (one.file, one.line) in rows)
    return replace(records, entries=entries, files=files, remarks=remarks)


def list_untold(records: Records, part: Part) -> Iterable[Entry]:
    """The entries that may be of a part, and do not tell where or when they were."""
    return (entry for name in OF_READINGS for entry in records.of(name) if part.may_hold(entry))
