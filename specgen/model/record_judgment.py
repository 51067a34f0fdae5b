"""Results of judging a site record: the state of each reading, and the nonconformances in their order."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from typing import NamedTuple, overload

from specgen.model.finding import Severity
from specgen.model.problem import Problem
from specgen.model.record import OF_READINGS, Entry
from specgen.model.source import Basis

# The decision that settles nothing: the work is to be presented again.
REJECTED = "rejected"


class ReadingState(StrEnum):
    """How a reading ends; of several clauses the one that stands first here counts."""

    OUTSIDE = "outside"
    MISSING = "missing"
    NOT_EVALUATED = "not_evaluated"
    WITHIN = "within"
    NOT_APPLICABLE = "not_applicable"


class Reading(NamedTuple):
    """One field of an entry, how it ends, and why: the clause, or what is missing."""

    entry: Entry
    field: str  # its last name
    state: ReadingState
    reason: str


class Nonconformance(NamedTuple):
    """A clause that fired on an entry."""

    number: int  # from 1, in the order of the entries
    code: str  # `WEA-01c`
    severity: Severity  # after any deviation
    entry: Entry
    field: str  # the last name of the field that was read
    message: str
    found: str
    wanted: str
    basis: Basis
    remedy: str
    documents: tuple[str, ...] = ()
    steps: tuple[str, ...] = ()
    lifted_by: str | None = None
    disposition: Entry | None = None  # the last that was entered for it

    @property
    def is_settled(self) -> bool:
        """Whether it waits for no decision: a deviation lifts it, it is for information, or it is disposed of."""
        decided = self.disposition is not None and self.disposition.get("decision") != REJECTED
        return self.lifted_by is not None or self.severity is Severity.NOTE or decided


class ReadingsAlike(NamedTuple):
    """The readings of one field at one step that end alike and for the same reason."""

    collection: str
    step: str  # or criterion; empty where the entries tell none
    field: str  # its last name
    state: ReadingState
    reason: str
    entries: Sequence[Entry]  # in their order


class ReadingList(Sequence[Reading]):
    """Readings in the order of the entries, each made as it is asked for: of a long record they are many."""

    def __init__(self, alike: Sequence[ReadingsAlike]) -> None:
        self.alike = alike

    def __len__(self) -> int:
        return sum(len(one.entries) for one in self.alike)

    def __iter__(self) -> Iterator[Reading]:
        for collection in OF_READINGS:
            of_entry: dict[int, list[tuple[Entry, ReadingsAlike]]] = {}
            for one in self.alike:
                for entry in one.entries if one.collection == collection else ():
                    of_entry.setdefault(entry.number, []).append((entry, one))
            for number in sorted(of_entry):
                yield from (Reading(entry, one.field, one.state, one.reason) for entry, one in of_entry[number])

    @overload
    def __getitem__(self, index: int) -> Reading: ...
    @overload
    def __getitem__(self, index: slice) -> Sequence[Reading]: ...
    def __getitem__(self, index: int | slice) -> Reading | Sequence[Reading]:
        return tuple(self)[index]


class MissingCriterion(NamedTuple):
    """A line of the mockup acceptance form, or a part of it, that no result is recorded of."""

    criterion: str  # as records call it
    number: str  # of the line, or of its parts: `15`, `21c, 21d`
    title: str


class MockupCount(NamedTuple):
    """How many criteria the acceptance form has, and what no result is recorded of; no criteria where none is asked."""

    criteria: int = 0
    missing: tuple[MissingCriterion, ...] = ()

    @property
    def recorded(self) -> int:
        """The criteria that are recorded in full."""
        return self.criteria - len(self.missing)

    def tell(self) -> str:
        """`22 of 33 criteria recorded; not recorded: 1 WRB thickness, 15b Gloss cup time, coat 2`."""
        said = f"{self.recorded:,} of {self.criteria:,} criteria recorded"
        if not self.recorded or not self.missing:
            return said
        return f"{said}; not recorded: {'; '.join(f'{one.number} {one.title}' for one in self.missing)}"


@dataclass(frozen=True)
class RecordJudgment:
    """The nonconformances of a record, its readings by state, and those that are missing or not evaluated.

    `alike` are all readings, those of a field at a step that end alike together. `mockup` counts the criteria of the
    mockup where one is recorded, or at closeout.
    """

    nonconformances: tuple[Nonconformance, ...] = ()
    counts: Mapping[ReadingState, int] = field(default_factory=dict)
    unsettled: Sequence[Reading] = ()  # missing and not evaluated, in the order of the entries
    alike: tuple[ReadingsAlike, ...] = ()
    unmatched: tuple[Problem, ...] = ()  # dispositions that answer no nonconformance, each at its place
    mockup: MockupCount = MockupCount()
    unplaced: tuple[Problem, ...] = ()  # results that stand on no line of the acceptance form, each at its place

    @property
    def open(self) -> tuple[Nonconformance, ...]:
        """The nonconformances that wait for a decision."""
        return tuple(one for one in self.nonconformances if not one.is_settled)
