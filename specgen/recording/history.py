"""The entries of a site record in the order of time: what was done, released and inspected on each face, and when."""

from collections.abc import Callable, Hashable, Iterable
from datetime import datetime
from functools import cached_property
from typing import Any

from specgen.model.project import Project
from specgen.model.record import Entry, Records, day_of
from specgen.recording.entry_kinds import is_pass, is_work
from specgen.recording.timeline import Timeline, order_of

_Key = tuple[str | int | None, ...]
# The area of a group that holds the entries of a whole face and of all its parts.
_ANYWHERE = None


class History:
    """Entries by collection, elevation and step, each list in the order of time, so that a look-up is a search.

    An entry at a place is one that names the same area, or none: that is the whole face.
    """

    def __init__(self, records: Records) -> None:
        self.records = records
        timed = (entry for name in ("log", "release", "inspection") for entry in records.of(name))
        self._steps = _group(timed, lambda entry: (entry.collection, *_step_of(entry)))
        self._given: dict[str, dict[_Key, Timeline]] = {}
        self.released: dict[Hashable, bool] = {}  # what was found of a point at a place on a day
        self._values: dict[_Key, frozenset[Any]] = {}

    def list_entries(self, collection: str, elevation: str, step: str) -> tuple[Entry, ...]:
        """The entries of a step on an elevation in the order of time; those without a time stand on their day's end."""
        found = self._steps.get((collection, elevation, step, _ANYWHERE))
        return () if found is None else found.entries

    def find_last(self, collection: str, elevation: str, step: str, until: datetime, area: str = "") -> Entry | None:
        """The last entry of a step on an elevation that began at or before a moment, there where the area is."""
        lines = _at_place(self._steps, (collection, elevation, step), area)
        return max(_drop_none(line.find_last(until) for line in lines), key=order_of, default=None)

    def find_next(self, collection: str, elevation: str, step: str, since: datetime, area: str = "") -> Entry | None:
        """The first entry of a step on an elevation that began at or after a moment, there where the area is."""
        lines = _at_place(self._steps, (collection, elevation, step), area)
        return min(_drop_none(line.find_next(since) for line in lines), key=order_of, default=None)

    def find_last_pass(
        self, elevation: str, step: str, until: datetime, area: str = "", coat: int | None = None
    ) -> Entry | None:
        """Of the passes of a step, or of one coat of it, that began before a moment, the one that ended last.

        Where two crews work side by side, the one that began first may be the last to end.
        """
        lines = _at_place(self._passes, (elevation, step, coat), area)
        ended = _drop_none(line.find_ended_last(until) for line in lines)
        return max(ended, key=lambda entry: (entry.ended or datetime.min, entry.number), default=None)

    def find_first_with(
        self, name: str, elevation: str, step: str, area: str = "", coat: int | None = None
    ) -> Entry | None:
        """The first entry of a step, or of one coat of it, there where the area is, that gives a field."""
        lines = _at_place(self._with(name), (elevation, step, coat), area)
        return min((line.entries[0] for line in lines), key=order_of, default=None)

    def find_previous_with(self, name: str, entry: Entry) -> Entry | None:
        """The entry before this one of the same step at the same place that gives a field."""
        lines = _at_place(self._with(name), (*_step_of(entry), None), _area_of(entry))
        return max(_drop_none(line.find_before(entry) for line in lines), key=order_of, default=None)

    def list_values(self, name: str, elevation: str, step: str, area: str = "") -> frozenset[Any]:
        """The values that the entries of a step give a field, there where the area is."""
        key = (name, elevation, step, _fold(area))
        if key not in self._values:
            lines = _at_place(self._with(name), (elevation, step, None), area)
            self._values[key] = frozenset(entry.values[name] for line in lines for entry in line.entries)
        return self._values[key]

    @cached_property
    def firsts_of_day(self) -> frozenset[int]:
        """The numbers of the entries of work that are the first of their day, step and area: a lapse is told there."""
        firsts: dict[_Key, Entry] = {}
        for entry in sorted(filter(is_work, self.records.of("log")), key=order_of):
            firsts.setdefault((*_step_of(entry), _fold(_area_of(entry)), str(day_of(entry))), entry)
        return frozenset(entry.number for entry in firsts.values())

    @cached_property
    def _passes(self) -> dict[_Key, Timeline]:
        """The passes by elevation, step, coat and area; under no coat those of all."""
        return _group_coats(filter(is_pass, self.records.of("log")))

    def _with(self, name: str) -> dict[_Key, Timeline]:
        """The entries of the log that give a field, grouped as the passes are."""
        if name not in self._given:
            self._given[name] = _group_coats(one for one in self.records.of("log") if one.get(name) is not None)
        return self._given[name]


def is_same_place(one: str, other: str) -> bool:
    """Whether two areas as people write them are the same; one that is not told is the whole face."""
    return not one or not other or _fold(one) == _fold(other)


def history_of(project: Project) -> History:
    """The history of the records of a project, put in order once."""
    return project.remember("history of the records", lambda: History(project.records))


def _group(entries: Iterable[Entry], key_of: Callable[[Entry], _Key]) -> dict[_Key, Timeline]:
    """The entries by key and area, and once more by key alone."""
    grouped: dict[_Key, list[Entry]] = {}
    for entry in entries:
        key = key_of(entry)
        for area in (_fold(_area_of(entry)), _ANYWHERE):
            grouped.setdefault((*key, area), []).append(entry)
    return {key: Timeline(tuple(sorted(listed, key=order_of))) for key, listed in grouped.items()}


def _group_coats(entries: Iterable[Entry]) -> dict[_Key, Timeline]:
    """The entries by elevation, step, coat and area, and once more by step and area under no coat."""
    listed = list(entries)
    told = (entry for entry in listed if entry.get("coat") is not None)
    of_coats = _group(told, lambda entry: (*_step_of(entry), entry.get("coat")))
    return of_coats | _group(listed, lambda entry: (*_step_of(entry), None))


def _at_place(groups: dict[_Key, Timeline], key: _Key, area: str) -> list[Timeline]:
    """The groups of a key at a place: those of the area and of the whole face, or without an area of all."""
    areas: tuple[str | None, ...] = (_fold(area), "") if area else (_ANYWHERE,)
    return [groups[(*key, one)] for one in areas if (*key, one) in groups]


def _drop_none(entries: Iterable[Entry | None]) -> list[Entry]:
    return [entry for entry in entries if entry is not None]


def _step_of(entry: Entry) -> tuple[str, str]:
    return entry.get("elevation") or "", entry.get("step") or ""


def _area_of(entry: Entry) -> str:
    return str(entry.get("area") or "")


def _fold(area: str) -> str:
    return " ".join(area.casefold().split())
