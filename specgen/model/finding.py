"""What judging says of a project."""

from dataclasses import dataclass, field
from enum import StrEnum

from specgen.model.source import Basis
from specgen.quantities.comparison import Outcome


class Severity(StrEnum):
    """How a fired clause binds: a stop may not be submitted or built, a caution needs its measure."""

    STOP = "stop"
    CAUTION = "caution"
    NOTE = "note"


class Verdict(StrEnum):
    """Whether the finish may go on a wall."""

    YES = "yes"
    WITH_MEASURES = "with_measures"
    NO = "no"
    NOT_YET_KNOWN = "not_yet_known"


@dataclass(frozen=True, slots=True)
class Place:
    """Where a value stands: dotted path, file, line and column from 1; 0 where it stands nowhere."""

    path: str
    file: str = ""
    line: int = 0
    column: int = 0


@dataclass(frozen=True, slots=True)
class Finding:
    """A fired clause with all its subjects; `found` and `wanted` are printed text.

    `steps` are all that it bears on, `step` the one at which a procedure prints it.
    """

    rule: str
    clause: str
    severity: Severity
    subjects: tuple[str, ...]
    message: str
    found: str
    wanted: str
    place: Place
    basis: Basis
    remedy: str
    steps: tuple[str, ...]
    documents: tuple[str, ...]
    step: str
    lifted_by: str | None = None
    walls: tuple[str, ...] = ()

    @property
    def code(self) -> str:
        """`SLT-03e`: the rule with its clause."""
        return self.rule + self.clause


@dataclass(frozen=True, slots=True)
class NotJudged:
    """A clause that could not be judged for a subject, and the paths it waits for."""

    rule: str
    clause: str
    subject: str
    needs: tuple[str, ...]
    walls: tuple[str, ...] = ()

    @property
    def code(self) -> str:
        """`SLT-03e`: the rule with its clause."""
        return self.rule + self.clause


@dataclass(frozen=True, slots=True)
class LimitCheck:
    """A clause that holds a value of the project against a computed one: which, of which member, and how it came out.

    `path` is where the project's value stands.
    """

    name: str
    member: tuple[str, ...]
    code: str
    path: tuple[str, ...]
    outcome: Outcome


@dataclass(frozen=True, slots=True)
class OpenItem:
    """An owed field that is absent, who owes it, and the clauses it holds up."""

    path: str
    label: str
    ring: str
    owed_by: str
    holds_up: tuple[str, ...]


@dataclass(frozen=True)
class Judgment:
    """All that judging found.

    `walls` maps each wall to its verdict, `deciding` to the clauses behind it, `undecided` to the rules that
    count for a plain yes and still wait.
    """

    walls: dict[str, Verdict]
    findings: tuple[Finding, ...]
    open_items: tuple[OpenItem, ...]
    not_judged: tuple[NotJudged, ...]
    deciding: dict[str, tuple[str, ...]]
    undecided: dict[str, tuple[str, ...]]
    stops_when_open: bool = False
    later_rings: dict[str, int] = field(default_factory=dict)
    compared: tuple[LimitCheck, ...] = ()

    def of(self, severity: Severity) -> tuple[Finding, ...]:
        """The findings of one severity, in the order of the rules."""
        return tuple(f for f in self.findings if f.severity is severity)

    @property
    def stopped(self) -> bool:
        """Whether the package may not be submitted."""
        return bool(self.of(Severity.STOP)) or (self.stops_when_open and bool(self.open_items))
