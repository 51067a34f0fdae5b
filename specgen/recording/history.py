"""The entries of a site record in the order of time: what was done, released and inspected on each face, and when."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date, datetime
from functools import cached_property, lru_cache

from specgen.model.project import Project
from specgen.model.record import Entry, Records, day_of
from specgen.recording.entry_kinds import is_pass, is_work
from specgen.recording.timeline import Order, Timeline, order_of

_Key = tuple[str | int | date | None, ...]
# The area of a group that holds the entries of a whole face and of all its parts.
_ANYWHERE = None


class History:
    """Entries by collection, elevation and step, each list in the order of time, so that a look-up is a search.

    An entry at a place is one that names the same area, or none: that is the whole face.
    """

    def __init__(self, records: Records) -> None:
        self.records = records
        timed = [entry for name in ("log", "release", "inspection") for entry in records.of(name)]
        orders = {id(entry): order_of(entry) for entry in timed}
        self._find_order: Callable[[Entry], Order] = lambda entry: orders[id(entry)]
        timed.sort(key=self._find_order)
        self._log = [entry for entry in timed if entry.collection == "log"]
        self._steps = self._group(timed, lambda entry: (entry.collection, *_step_of(entry)))
        self._given: dict[str, dict[_Key, Timeline]] = {}

    def list_log(self) -> Iterator[tuple[Order, Entry]]:
        """The entries of the log in the order of time, each with its order."""
        return ((self._find_order(entry), entry) for entry in self._log)

    def list_entries(self, collection: str, elevation: str, step: str) -> tuple[Entry, ...]:
        """The entries of a step on an elevation in the order of time; those without a time stand on their day's end."""
        found = self._steps.get((collection, elevation, step, _ANYWHERE))
        return () if found is None else found.entries

    def find_last(self, collection: str, elevation: str, step: str, until: datetime, area: str = "") -> Entry | None:
        """The last entry of a step on an elevation that began at or before a moment, there where the area is."""
        lines = _at_place(self._steps, (collection, elevation, step), area)
        return _find_latest(line.find_last(until) for line in lines)

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

    def find_last_pass_on(
        self, panels: Iterable[str], elevation: str, step: str, until: datetime, area: str = "", coat: int | None = None
    ) -> Entry | None:
        """As `find_last_pass`, of the passes that name one of these panels, or none."""
        keys = ((elevation, step, coat, panel) for panel in panels)
        lines = [self._by_panel[key] for key in keys if key in self._by_panel]
        lines += _at_place(self._by_area, (elevation, step, coat), area)
        ended = _drop_none(line.find_ended_last(until) for line in lines)
        return max(ended, key=lambda entry: (entry.ended or datetime.min, entry.number), default=None)

    def find_first_with(self, name: str, entry: Entry) -> Entry | None:
        """The first entry of the same coat at the same place that gives a field; of any coat where none is told."""
        lines = _at_place(self._with(name), (*_step_of(entry), entry.get("coat")), _area_of(entry))
        return min((line.entries[0] for line in lines), key=order_of, default=None)

    def find_previous_with(self, name: str, entry: Entry) -> Entry | None:
        """The entry before this one of the same step at the same place that gives a field."""
        lines = _at_place(self._with(name), (*_step_of(entry), None), _area_of(entry))
        return _find_latest(line.find_before(entry) for line in lines)

    @cached_property
    def firsts_of_work(self) -> Mapping[int, bool]:
        """True by number for each entry of work that is the first of its day, step and area, and so tells a lapse."""
        firsts: dict[_Key, Entry] = {}
        for entry in filter(is_work, self._log):
            firsts.setdefault(_day_key(entry), entry)
        return {entry.number: True for entry in firsts.values()}

    @cached_property
    def _passes(self) -> dict[_Key, Timeline]:
        """The passes by elevation, step, coat and area; under no coat those of all."""
        return self._group_coats(filter(is_pass, self._log))

    @cached_property
    def _by_area(self) -> dict[_Key, Timeline]:
        """As the passes, those that name no panels."""
        return self._group_coats(entry for entry in self._log if is_pass(entry) and not entry.get("panels"))

    @cached_property
    def _by_panel(self) -> dict[_Key, Timeline]:
        """The passes by elevation, step, coat and panel."""
        grouped: dict[_Key, list[Entry]] = {}
        for entry in filter(is_pass, self._log):
            for panel in entry.get("panels") or ():
                grouped.setdefault((*_step_of(entry), entry.get("coat"), panel), []).append(entry)
        return {key: Timeline(tuple(listed), self._find_order) for key, listed in grouped.items()}

    def _with(self, name: str) -> dict[_Key, Timeline]:
        """The entries of the log that give a field, grouped as the passes are."""
        if name not in self._given:
            self._given[name] = self._group_coats(one for one in self._log if one.get(name) is not None)
        return self._given[name]

    def _group_coats(self, entries: Iterable[Entry]) -> dict[_Key, Timeline]:
        """The entries by elevation, step, coat and area, and once more by step and area under no coat."""
        listed = list(entries)
        told = (entry for entry in listed if entry.get("coat") is not None)
        of_coats = self._group(told, lambda entry: (*_step_of(entry), entry.get("coat")))
        return of_coats | self._group(listed, lambda entry: (*_step_of(entry), None))

    def _group(self, entries: Iterable[Entry], key_of: Callable[[Entry], _Key]) -> dict[_Key, Timeline]:
        """Entries in the order of time by key and area, and once more by key alone."""
        grouped: dict[_Key, list[Entry]] = {}
        known: dict[_Key, tuple[list[Entry], list[Entry]]] = {}  # by key and area as it is written
        for entry in entries:
            written = (*key_of(entry), entry.values.get("area"))
            if written not in known:
                keys = ((*written[:-1], area) for area in (_fold(_area_of(entry)), _ANYWHERE))
                here, anywhere = (grouped.setdefault(key, []) for key in keys)
                known[written] = here, anywhere
            for listed in known[written]:
                listed.append(entry)
        return {key: Timeline(tuple(listed), self._find_order) for key, listed in grouped.items()}


def is_same_place(one: str, other: str) -> bool:
    """Whether two areas as people write them are the same; one that is not told is the whole face."""
    return not one or not other or _fold(one) == _fold(other)


def history_of(project: Project) -> History:
    """The history of the records of a project, put in order once."""
    return project.remember("history of the records", lambda: History(project.records))


def _at_place(groups: dict[_Key, Timeline], key: _Key, area: str) -> list[Timeline]:
    """The groups of a key at a place: those of the area and of the whole face, or without an area of all."""
    areas: tuple[str | None, ...] = (_fold(area), "") if area else (_ANYWHERE,)
    return [groups[(*key, one)] for one in areas if (*key, one) in groups]


def _find_latest(entries: Iterable[Entry | None]) -> Entry | None:
    """The last of some entries; none where there is none."""
    found = _drop_none(entries)
    return max(found, key=order_of) if len(found) > 1 else next(iter(found), None)


def _drop_none(entries: Iterable[Entry | None]) -> list[Entry]:
    return [entry for entry in entries if entry is not None]


def _step_of(entry: Entry) -> tuple[str, str]:
    return entry.get("elevation") or "", entry.get("step") or ""


def _area_of(entry: Entry) -> str:
    return str(entry.get("area") or "")


def _day_key(entry: Entry) -> _Key:
    return (*_step_of(entry), _fold(_area_of(entry)), day_of(entry))


@lru_cache(maxsize=4096)
def _fold(area: str) -> str:
    return " ".join(area.casefold().split())
