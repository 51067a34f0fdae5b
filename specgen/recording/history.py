"""The entries of a site record in the order of time: what was done, released and inspected on each face, and when."""

from bisect import bisect_left, bisect_right
from collections import defaultdict
from collections.abc import Iterable
from datetime import datetime

from specgen.model.project import Project
from specgen.model.record import Entry, Records, day_of

_Key = tuple[str, str, str]  # collection, elevation, step


class History:
    """Entries by collection, elevation and step, each list in the order of time, so that a look-up is a search."""

    def __init__(self, records: Records) -> None:
        self.records = records
        grouped: dict[_Key, list[Entry]] = defaultdict(list)
        for collection in ("log", "release", "inspection"):
            for entry in records.of(collection):
                grouped[collection, entry.get("elevation") or "", entry.get("step") or ""].append(entry)
        self._grouped = {key: tuple(sorted(entries, key=_order)) for key, entries in grouped.items()}
        self._began = {key: [_order(entry)[0] for entry in entries] for key, entries in self._grouped.items()}

    def list_entries(self, collection: str, elevation: str, step: str) -> tuple[Entry, ...]:
        """The entries of a step on an elevation in the order of time; those without a time stand on their day's end."""
        return self._grouped.get((collection, elevation, step), ())

    def find_last(self, collection: str, elevation: str, step: str, until: datetime, area: str = "") -> Entry | None:
        """The last entry of a step on an elevation that began at or before a moment, there where the area is."""
        key = (collection, elevation, step)
        end = bisect_right(self._began.get(key, []), until)
        return _find_at(reversed(self._grouped.get(key, ())[:end]), area) if end else None

    def find_next(self, collection: str, elevation: str, step: str, since: datetime, area: str = "") -> Entry | None:
        """The first entry of a step on an elevation that began at or after a moment, there where the area is."""
        key = (collection, elevation, step)
        start = bisect_left(self._began.get(key, []), since)
        return _find_at(self._grouped.get(key, ())[start:], area)


def is_same_place(one: str, other: str) -> bool:
    """Whether two areas as people write them are the same; one that is not told is the whole face."""
    return not one or not other or _fold(one) == _fold(other)


def history_of(project: Project) -> History:
    """The history of the records of a project, put in order once."""
    return project.remember("history of the records", lambda: History(project.records))


def _find_at(entries: Iterable[Entry], area: str) -> Entry | None:
    return next((entry for entry in entries if is_same_place(area, str(entry.get("area") or ""))), None)


def _fold(area: str) -> str:
    return " ".join(area.casefold().split())


def _order(entry: Entry) -> tuple[datetime, int]:
    """The moment of an entry, and its place in the files among those of one moment."""
    if entry.began is not None:
        return entry.began, entry.number
    day = day_of(entry)
    late = datetime.max if day is None else datetime(day.year, day.month, day.day, 23, 59, 59)
    return late, entry.number
