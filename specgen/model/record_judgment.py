"""Results of judging a site record: the state of each reading, and the nonconformances in their order."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import NamedTuple

from specgen.model.finding import Severity
from specgen.model.record import Entry
from specgen.model.source import Basis


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


@dataclass(frozen=True)
class RecordJudgment:
    """The nonconformances of a record, its readings by state, and those that are missing or not evaluated."""

    nonconformances: tuple[Nonconformance, ...] = ()
    counts: Mapping[ReadingState, int] = field(default_factory=dict)
    unsettled: tuple[Reading, ...] = ()  # missing and not evaluated, in the order of the entries
