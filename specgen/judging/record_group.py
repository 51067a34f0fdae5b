"""The entries of one step, and their values by columns, so that those alike are judged once."""

from collections import defaultdict
from collections.abc import Callable, Sequence
from functools import cached_property
from typing import Any

from specgen.judging.entry_view import Fact, FieldFact, FoundFact, GivenFact
from specgen.model.project import Project
from specgen.model.record import Entry
from specgen.quantities.quantity import Quantity
from specgen.recording.entry_kinds import owes

# The field that tells apart which clauses concern an entry: those of other steps are not asked.
KEYS = {"log": "step", "release": "step", "inspection": "step", "result": "criterion"}


class EntryGroup:
    """Entries of one collection and of one step or criterion, in their order; `step` is empty where none is told."""

    def __init__(self, project: Project, collection: str, step: str, entries: Sequence[Entry]) -> None:
        self.project, self.collection, self.step, self.entries = project, collection, step, entries
        self.rows = [entry.values for entry in entries]
        self.places: Sequence[int] = list(range(len(entries)))
        self._columns: dict[str | Fact, list[int]] = {}
        self._parts: dict[str | Fact, list[list[int]]] = {}

    @cached_property
    def probe(self) -> Entry:
        """An entry that gives its step and nothing else."""
        key = KEYS[self.collection]
        first = self.entries[0]
        return Entry(self.collection, first.number, {key: self.step} if self.step else {}, first.place)

    def find_codes(self, column: str | Fact) -> list[int]:
        """A number for the value of a field in each entry, or for the answer of a fact: the same for the same."""
        if column not in self._columns:
            blank = isinstance(column, str) and not any(column in shape for shape in self._shapes[1])
            self._columns[column] = [0] * len(self.rows) if blank else _encode(self._list_values(column))
        return self._columns[column]

    def _list_values(self, column: str | Fact) -> list[Any]:
        if isinstance(column, str):
            return [row.get(column) for row in self.rows]
        if isinstance(column, FoundFact):
            return list(map(column.find_all(self.project).get, self._numbers))
        if isinstance(column, GivenFact):
            codes, shapes = self._shapes
            answers = list(map(column.answer, shapes))
            return [answers[code] for code in codes]
        if not isinstance(column, FieldFact):
            return [column(self.project, entry) for entry in self.entries]
        prepared = [_prepare(self._list_values(field), column.prepare) for field in column.fields]
        return list(map(column.answer, *prepared))

    def split(self, column: str | Fact, places: Sequence[int]) -> list[list[int]]:
        """Some of the entries, by their places in the group, in parts that are alike in a column."""
        if places is not self.places:
            return _split(self.find_codes(column), places)
        if column not in self._parts:
            self._parts[column] = _split(self.find_codes(column), places)
        return self._parts[column]

    def find_given(self, field: str) -> list[bool]:
        """Whether each entry gives a field."""
        codes, shapes = self._shapes
        holds = [field in shape for shape in shapes]
        return [holds[code] for code in codes]

    def may_lack(self, field: str) -> bool:
        """Whether any entry is of a kind that owes a field and does not give it."""
        return any(field not in shape and self._owes(shape, field) for shape in self._shapes[1])

    def find_owing(self, field: str) -> list[bool]:
        """Whether each entry is of a kind that owes a field; those of other collections owe all of theirs."""
        codes, shapes = self._shapes
        owing = [self._owes(shape, field) for shape in shapes]
        return [owing[code] for code in codes]

    def _owes(self, shape: tuple[str, ...], field: str) -> bool:
        return self.collection != "log" or owes(shape, field)

    @cached_property
    def _numbers(self) -> list[int]:
        return [entry.number for entry in self.entries]

    @cached_property
    def _shapes(self) -> tuple[list[int], list[tuple[str, ...]]]:
        """For each entry which fields it gives, as the number of one of the ways that there are: they are few."""
        known: dict[tuple[str, ...], int] = {}
        codes = [known.setdefault(tuple(row), len(known)) for row in self.rows]
        return codes, list(known)


def group_entries(project: Project, collection: str) -> list[EntryGroup]:
    """The entries of a collection by their steps, in the order in which these occur."""
    by_step: dict[str, list[Entry]] = {}
    for entry in project.records.of(collection):
        by_step.setdefault(entry.values.get(KEYS[collection]) or "", []).append(entry)
    return [EntryGroup(project, collection, step, listed) for step, listed in by_step.items()]


def _split(codes: Sequence[int], places: Sequence[int]) -> list[list[int]]:
    parts: dict[int, list[int]] = defaultdict(list)
    for place in places:
        parts[codes[place]].append(place)
    return list(parts.values())


def _prepare(values: list[Any], prepare: Callable[[Any], Any]) -> list[Any]:
    """What comes of each value; each object is looked at once."""
    marks = list(map(id, values))
    objects = dict(zip(marks, values, strict=True))
    made = {mark: prepare(value) for mark, value in objects.items() if value is not None}
    return [made.get(mark) for mark in marks]


def _encode(values: list[Any]) -> list[int]:
    """A number for each value. Each object is looked at once: readers give the same one for the same text."""
    marks = list(map(id, values))
    known: dict[Any, int] = {}
    objects = dict(zip(marks, values, strict=True))
    by_id = {mark: known.setdefault(tell_apart(value), len(known)) for mark, value in objects.items()}
    return [by_id[mark] for mark in marks]


def tell_apart(value: Any) -> Any:
    """What two values share only if they also print alike: 50 F is not 10 C, nor `yes` 1."""
    return (value.amount, value.unit, value.text) if isinstance(value, Quantity) else (type(value), value)
