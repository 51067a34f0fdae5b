"""Results of judging a project: findings, open items, verdicts."""

from dataclasses import dataclass, field
from enum import StrEnum
from typing import NamedTuple

from specgen.model.source import Basis
from specgen.quantities.comparison import Outcome


class Severity(StrEnum):
    """Weight of a finding: a stop may not be submitted or built, a caution needs its measure."""

    STOP = "stop"
    CAUTION = "caution"
    NOTE = "note"


class Verdict(StrEnum):
    """Whether the finish may go on a wall."""

    YES = "yes"
    WITH_MEASURES = "with_measures"
    NO = "no"
    NOT_YET_KNOWN = "not_yet_known"


class Place(NamedTuple):
    """Location of a value: dotted path, file, line and column from 1; 0 if it is in no file."""

    path: str
    file: str = ""
    line: int = 0
    column: int = 0


class ToAdd(NamedTuple):
    """A line that the project file lacks, and that a finding asks for."""

    path: str  # dotted; `X` stands for the mark of a new member
    value: str = ""  # as it is typed; empty for a field, which has an example of its own


class Told(NamedTuple):
    """What a finding tells of some of its subjects alone."""

    subjects: tuple[str, ...]
    message: str
    remedy: str


class Finding(NamedTuple):
    """A fired clause with all its subjects."""

    rule: str  # its code, such as SLT-03
    clause: str  # its letter
    severity: Severity  # after any deviation
    subjects: tuple[str, ...]  # names of the members it is about, or `project`
    message: str  # one or more sentences
    found: str  # the value found, as text
    wanted: str  # the limit or other value it was compared with, as text
    place: Place  # where the value is in the files
    basis: Basis  # the sources behind the clause
    remedy: str  # what to do about it
    steps: tuple[str, ...]  # names of all steps of the work it affects
    documents: tuple[str, ...]  # ids of the documents it affects
    step: str  # the step at which a procedure prints it
    lifted_by: str | None = None  # the mark of the deviation that lifted a stop
    walls: tuple[str, ...] = ()  # marks of the walls it counts for
    told: tuple[Told, ...] = ()  # message and remedy, apart for the subjects of which another is told
    places: tuple[Place, ...] = ()  # one for each of its subjects, in their order
    to_add: tuple[ToAdd, ...] = ()  # what answers it, where that is a line of the file

    @property
    def code(self) -> str:
        """`SLT-03e`: the rule with its clause."""
        return self.rule + self.clause


class NotJudged(NamedTuple):
    """A clause that could not be judged for a subject, and the paths it waits for."""

    rule: str  # its code
    clause: str  # its letter
    subject: str  # name of the member
    needs: tuple[str, ...]  # dotted paths of the missing fields
    walls: tuple[str, ...] = ()  # marks of the walls it counts for

    @property
    def code(self) -> str:
        """`SLT-03e`: the rule with its clause."""
        return self.rule + self.clause


class LimitCheck(NamedTuple):
    """A check of a clause that compares a value of the project with a computed one."""

    name: str  # of the computed value
    member: tuple[str, ...]  # the path of its member
    code: str  # of the clause
    path: tuple[str, ...]  # of the project's value
    outcome: Outcome  # within, outside, or missing for want of a value


class OpenItem(NamedTuple):
    """An owed field that is absent, who owes it, and the clauses it holds up."""

    path: str  # dotted
    label: str  # of the field, or of a collection absent as a whole
    ring: str  # when it is owed
    owed_by: str  # the party that must give it
    holds_up: tuple[str, ...]  # codes of the clauses that wait for it


class WallJudgment(NamedTuple):
    """The verdict of a wall, what it rests on, and what it waits for."""

    verdict: Verdict
    deciding: tuple[str, ...]  # codes of the findings behind it
    undecided: tuple[str, ...]  # codes of the rules that wait for a field
    fields: tuple[str, ...]  # dotted paths of the fields it waits for
    documents: tuple[str, ...]  # names of the documents it waits for
    measures: int  # number of cautions and lifted stops
    refused_by: tuple[str, ...] = ()  # codes of the stops that make it a no
    lacking: tuple[str, ...] = ()  # codes of the stops for want of a document


@dataclass(frozen=True, kw_only=True)
class Judgment:
    """The whole result of judging a project."""

    walls: dict[str, WallJudgment]  # by the mark of the wall
    findings: tuple[Finding, ...]  # in the order of the rules
    open_items: tuple[OpenItem, ...]  # those of the rings owed now
    not_judged: tuple[NotJudged, ...]  # in the order of the rules
    stops_when_open: bool = False  # whether open items keep the package from being submitted
    later_rings: dict[str, int] = field(default_factory=dict)  # number of open items in each ring not owed yet
    limit_checks: tuple[LimitCheck, ...] = ()  # of computed values

    def of(self, severity: Severity) -> tuple[Finding, ...]:
        """The findings of one severity, in the order of the rules."""
        return tuple(f for f in self.findings if f.severity is severity)

    @property
    def stopped(self) -> bool:
        """Whether the package may not be submitted."""
        return bool(self.of(Severity.STOP)) or (self.stops_when_open and bool(self.open_items))
