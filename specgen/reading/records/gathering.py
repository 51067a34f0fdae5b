"""Gathers entries of all record files: numbers them, tells what stands twice, and what cannot have been."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import timedelta
from typing import Any

from specgen.model.field import Field, Path
from specgen.model.finding import Place
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.record import COLLECTIONS, Entry, EntryPlace, RecordFile, Records
from specgen.model.value_text import count
from specgen.quantities.quantity import Quantity
from specgen.reading.grid import name_column
from specgen.reading.ranges import tell_apart
from specgen.reading.records.cell_reading import CellReader
from specgen.reading.records.clock import SiteClock

# What is told of one file of one kind; a file with more repeats one mistake.
_MOST = 100
# By these an entry is known; two that share them all tell of the same moment.
_IDENTITY = {
    "log": ("date", "started_at", "elevation", "area", "step", "coat", "crew", "pail", "panels"),
    "release": ("date", "time", "elevation", "area", "step"),
    "inspection": ("done_on", "elevation", "step"),
    "result": (),
    "disposition": ("clause", "date", "time", "elevation", "area", "step", "file", "row", "decided_on"),
}
# Without one of these an entry is no single moment or pail.
_MOMENTS = {
    "log": ("started_at", "pail"),
    "release": ("time",),
    "inspection": ("done_on",),
    "result": (),
    "disposition": ("clause",),
}
_LONG = timedelta(hours=14)  # an entry over midnight that lasts longer has its times the wrong way round, most likely
_TIMES = {"log": "started_at", "release": "time"}


@dataclass
class Gathering:
    """The entries of a project while files are read; `reader` reads their cells."""

    project: Project
    reader: CellReader
    entries: dict[str, list[Entry]] = field(default_factory=dict)
    files: list[RecordFile] = field(default_factory=list)
    faults: list[Problem] = field(default_factory=list)
    remarks: list[Problem] = field(default_factory=list)
    accepted: dict[Path, tuple[Any, Place]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        fields = self.project.schema.fields
        self._clock = SiteClock(self.project.values.get(("site", "time_zone")))
        self._ordered: dict[str, list[tuple[Field, str]]] = {name: [] for name in COLLECTIONS}
        for path, one in fields.items():
            if path[0] in self._ordered:
                self._ordered[path[0]] += [(one, low) for low in one.not_below]
        self._compared: dict[tuple[int, int], tuple[bool, Any, Any]] = {}
        self._seen: dict[int, int] = {}
        self._moments: dict[int, int] = {}
        self._untold: dict[str, int] = {}
        for name in COLLECTIONS:
            for entry in self.project.records.of(name):
                self.add_ordered(name, entry.values, entry.place, self.codes_of(entry.values))

    def codes_of(self, values: Mapping[str, Any]) -> tuple[int, ...]:
        """The numbers of values by which equal entries are known, in whatever order their fields stand."""
        return tuple(sorted(self.reader.code_of(name, value) for name, value in values.items()))

    def add(self, collection: str, values: Mapping[str, Any], place: EntryPlace, codes: tuple[int, ...]) -> None:
        """Add an entry that stands at a place, unless it is one that has been read already; its order is looked at."""
        for one, low in self._ordered[collection]:
            value, least = values.get(one.path[-1]), values.get(low)
            if value is not None and least is not None and self._is_below(value, least):
                self.fault(_tell_range(one, value, low, least), "correct one of the two", place, one.path[-1])
        self.add_ordered(collection, values, place, codes)

    def _is_below(self, value: Any, least: Any) -> bool:
        """Whether one value is below another; two objects are compared once, as readers give the same for one text."""
        pair = (id(value), id(least))
        known = self._compared.get(pair)
        if known is None:
            known = self._compared[pair] = (value < least, value, least)  # held, so that no other takes its place
        return known[0]

    def add_ordered(
        self, collection: str, values: Mapping[str, Any], place: EntryPlace, codes: tuple[int, ...]
    ) -> None:
        """Add an entry as `add` does, whose order is known."""
        entries = self.entries.setdefault(collection, [])
        entry = Entry(collection, len(entries), values, place)
        first = self._seen.setdefault(hash((collection, codes)), entry.number)
        if first != entry.number and entries[first].values == values:
            self.remark(f"this entry stands already in {tell_place(entries[first].place)}", "it is counted once", place)
            return
        entries.append(entry)
        self._look_at(entry)

    def _look_at(self, entry: Entry) -> None:
        """Note what cannot have been so, and another entry of the same moment with other readings."""
        values, collection = entry.values, entry.collection
        self._look_at_clock(entry)
        if not any(name in values for name in _MOMENTS[collection]):
            return
        key = hash((collection, *map(values.get, _IDENTITY[collection])))
        first = self._moments.setdefault(key, entry.number)
        if first != entry.number:
            self._compare_moment(entry, self.entries[collection][first])

    def _compare_moment(self, entry: Entry, other: Entry) -> None:
        """Note which readings of an entry differ from those of another one of the same moment."""
        differing = [name for name, value in entry.values.items() if other.values.get(name, value) != value]
        if differing:
            message = f"{', '.join(differing)} {'differs' if len(differing) == 1 else 'differ'} from the entry in "
            self.remark(f"{message}{tell_place(other.place)}", "both are kept: strike the wrong one", entry.place)

    def _look_at_clock(self, entry: Entry) -> None:
        name = _TIMES.get(entry.collection, "")
        day, at, end = (entry.values.get(one) for one in ("date", name, "ended_at"))
        if day is None or at is None:
            return
        if end is not None and end < at:
            self._look_at_length(entry)
        if not self._clock.is_changing(day):
            return
        missing = self._clock.tell_missing(day, at)
        if missing:
            self.fault(*missing, entry.place, name)
        twice = self._clock.tell_twice(day, at)
        if twice:
            self.remark(f"{name}: {twice}", "write beside it which of the two hours it was", entry.place)

    def _look_at_length(self, entry: Entry) -> None:
        """Note an entry over midnight that lasts longer than a shift."""
        began, ended = entry.began, entry.ended
        if began and ended and ended - began > _LONG:
            hours = count(int((ended - began) / timedelta(hours=1)), "hour")
            message = f"it ends {hours} after it began, on the next day"
            self.remark(message, "check which of the two times is which", entry.place)

    def accept(self, path: Path, value: Any, place: EntryPlace) -> None:
        """Take a setting of the accepted mockup; a second one that differs from the first is told at its place."""
        known = self.project.values.get(path)
        if known is not None:
            first = self.project.place(path)
            self._compare(path, value, known, f"{first.file}, line {first.line}", place)
        elif path in self.accepted:
            known, first = self.accepted[path]
            self._compare(path, value, known, tell_place(EntryPlace(first.file, first.line)), place)
        else:
            self.accepted[path] = (value, Place(".".join(path), place.file, place.line, place.column))

    def _compare(self, path: Path, value: Any, known: Any, first: str, place: EntryPlace) -> None:
        if known != value:
            self.fault(f"another value stands in {first}", "keep one of them", place, ".".join(path))

    def fault(self, message: str, hint: str, place: EntryPlace, about: str = "") -> None:
        """Note what could not be read at a place."""
        self._note(self.faults, Problem(message, hint, about, *locate_entry(place)), place.file)

    def remark(self, message: str, hint: str, place: EntryPlace) -> None:
        """Note what is to be told of an entry that was read."""
        self._note(self.remarks, Problem(message, hint, "", *locate_entry(place)), place.file)

    def _note(self, notes: list[Problem], problem: Problem, file: str) -> None:
        """Note a problem; of a file with many only how many more there are."""
        key = f"{'fault' if notes is self.faults else 'remark'} {file}"
        self._untold[key] = self._untold.get(key, 0) + 1
        if self._untold[key] <= _MOST:
            notes.append(problem)

    def finish_file(self, name: str, digest: str, before: int) -> None:
        """List a file that was read, with the entries that it added, and how much of it is not told one by one."""
        self.files.append(RecordFile(name, digest, self.count_entries() - before))
        for kind, notes in (("fault", self.faults), ("remark", self.remarks)):
            more = self._untold.pop(f"{kind} {name}", 0) - _MOST
            if more > 0:
                notes.append(Problem(f"and {count(more, f'more {kind}')}", file=name))

    def count_entries(self) -> int:
        """The number of entries read so far."""
        return sum(map(len, self.entries.values()))

    def records(self) -> Records:
        """All entries, the files they stand in, and what is told of them."""
        entries = {name: tuple(entries) for name, entries in self.entries.items()}
        old = self.project.records
        return Records(
            entries,
            (*old.files, *self.files),
            (*old.faults, *self.faults),
            tuple(dict.fromkeys((*old.remarks, *self.remarks))),
        )


def tell_place(place: EntryPlace) -> str:
    """`week-1.csv, row 12`; `records.yaml, line 4`; `form.pdf, row c3`."""
    if place.row:
        return f"{place.file}, row {place.row}"
    if place.sheet:
        return f"{place.file}, {place.sheet} row {place.line}"
    return f"{place.file}, {'row' if place.file.lower().endswith('.csv') else 'line'} {place.line}"


def locate_entry(place: EntryPlace) -> tuple[str, int, int]:
    """File, line, and column of a problem; a cell of a sheet is named as a spreadsheet shows it."""
    if place.row:
        return f"{place.file}, row {place.row}", 0, 0
    if place.sheet or place.file.lower().endswith(".csv"):
        cell = f"{name_column(place.column)}{place.line}" if place.column else f"row {place.line}"
        sheet = f"{place.sheet}{'!' if place.column else ' '}" if place.sheet else ""
        return f"{place.file}, {sheet}{cell}" if place.line else place.file, 0, 0
    return place.file, place.line, place.column


def _tell_range(one: Field, value: Any, low: str, least: Any) -> str:
    told = tell_apart(value, least) if isinstance(value, Quantity) else (str(value), str(least))
    return f"{told[0]} is below {told[1]}, the {low.replace('_', ' ')} of the same entry"
