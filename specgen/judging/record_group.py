"""The entries of one step, and their values by columns, so that those alike are judged once."""

from collections.abc import Hashable, Sequence
from functools import cached_property
from typing import Any

from specgen.model.record import Entry
from specgen.quantities.quantity import Quantity

# The field that tells apart which clauses concern an entry: those of other steps are not asked.
KEYS = {"log": "step", "release": "step", "inspection": "step", "result": "criterion"}
BLANK = 0  # the code of a field that was left blank

Codes = Sequence[Hashable]  # one for each entry


class EntryGroup:
    """Entries of one collection and of one step or criterion, in their order; `step` is empty where none is told."""

    def __init__(self, collection: str, step: str, entries: Sequence[Entry]) -> None:
        self.collection, self.step, self.entries = collection, step, entries
        self.rows = [entry.values for entry in entries]
        self._columns: dict[str, list[int]] = {}

    @cached_property
    def probe(self) -> Entry:
        """An entry that gives its step and nothing else."""
        key = KEYS[self.collection]
        first = self.entries[0]
        return Entry(self.collection, first.number, {key: self.step} if self.step else {}, first.place)

    def find_codes(self, field: str) -> list[int]:
        """A number for the value of a field in each entry: the same for the same value, BLANK for none."""
        if field not in self._columns:
            self._columns[field] = _encode([row.get(field) for row in self.rows])
        return self._columns[field]

    def find_given(self, field: str) -> list[bool]:
        """Whether each entry gives a field."""
        codes, shapes = self._shapes
        holds = [field in shape for shape in shapes]
        return [holds[code] for code in codes]

    @cached_property
    def _shapes(self) -> tuple[list[int], list[tuple[str, ...]]]:
        """For each entry which fields it gives, as the number of one of the ways that there are: they are few."""
        known: dict[tuple[str, ...], int] = {}
        codes = [known.setdefault(tuple(row), len(known)) for row in self.rows]
        return codes, list(known)

    def find_keys(self, fields: Sequence[str]) -> Codes:
        """What the entries hold in some fields: equal where all of these are."""
        if not fields:
            return [()] * len(self.entries)
        return self.find_codes(fields[0]) if len(fields) == 1 else list(zip(*map(self.find_codes, fields), strict=True))


def find_firsts(keys: Codes) -> dict[Hashable, int]:
    """The index of the first entry with each key, in the order of the entries."""
    found = dict(zip(reversed(keys), range(len(keys) - 1, -1, -1), strict=True))
    return dict(sorted(found.items(), key=lambda item: item[1]))


def group_entries(collection: str, entries: Sequence[Entry]) -> list[EntryGroup]:
    """The entries of a collection by their steps, in the order in which these occur."""
    by_step: dict[str, list[Entry]] = {}
    for entry in entries:
        by_step.setdefault(entry.values.get(KEYS[collection]) or "", []).append(entry)
    return [EntryGroup(collection, step, listed) for step, listed in by_step.items()]


def _encode(values: list[Any]) -> list[int]:
    """A number for each value. Each object is looked at once: readers give the same one for the same text."""
    marks = list(map(id, values))
    known: dict[Any, int] = {None: BLANK}
    objects = dict(zip(marks, values, strict=True))
    by_id = {mark: known.setdefault(tell_apart(value), len(known)) for mark, value in objects.items()}
    return [by_id[mark] for mark in marks]


def tell_apart(value: Any) -> Any:
    """What two values share only if they also print alike: 50 F is not 10 C, nor `yes` 1."""
    if value is None:
        return None
    return (value.amount, value.unit, value.text) if isinstance(value, Quantity) else (type(value), value)
