"""What differs between two states of a project."""

from dataclasses import dataclass
from typing import NamedTuple

from specgen.model.finding import Severity
from specgen.model.state import OwedDocument, Said


class FieldChange(NamedTuple):
    """A field that differs: what was given and is given, None for nothing."""

    path: str  # dotted
    label: str  # empty for a field that is not known any more
    owed_by: str  # the role that gives it
    old: Said | None
    new: Said | None


class ItemChange(NamedTuple):
    """An open item that is new, or closed."""

    path: str  # dotted
    label: str
    owed_by: str  # the role that gives it
    is_new: bool


class FigureChange(NamedTuple):
    """A limit in force or the result of a calculation that differs; None where there was or is none."""

    name: str  # of the row or calculation
    member: str  # the dotted path of the member of a calculation; empty for a limit or the project
    about: str  # title of the calculation, or the source now in force
    old: Said | None
    new: Said | None


class RuleChange(NamedTuple):
    """A clause that tells something else of a subject: its severity then and now, None for silence."""

    code: str  # SLT-03e
    subject: str
    message: str  # the one now in force, else the old one
    old: Severity | None
    new: Severity | None


class VerdictChange(NamedTuple):
    """The verdict of a wall that differs; None where there was or is no such wall."""

    wall: str
    old: str | None
    new: str | None


class ArticleChange(NamedTuple):
    """An article that differs: how many blocks of each kind were changed, added and removed."""

    number: str
    title: str
    changed: tuple[tuple[str, int], ...]
    added: tuple[tuple[str, int], ...]
    removed: tuple[tuple[str, int], ...]


class DocumentChange(NamedTuple):
    """A document that differs; one that is new or gone has no articles here."""

    id: str
    title: str
    kind: str  # changed, added or dropped
    articles: tuple[ArticleChange, ...] = ()
    blocks: frozenset[int] = frozenset()  # places of its changed and added blocks


@dataclass(frozen=True, kw_only=True)
class Changes:
    """All that differs from an older state; `issue` are the fields that name the issue itself, such as its date.

    `come` and `gone` are the dotted paths of members, such as a wall, that are new or dropped as a whole.
    """

    was: tuple[str, str]  # revision and date of the older state
    now: tuple[str, str]
    marked: bool = False  # whether the documents mark their changed blocks
    issue: tuple[FieldChange, ...] = ()
    fields: tuple[FieldChange, ...] = ()
    come: tuple[str, ...] = ()
    gone: tuple[str, ...] = ()
    limits: tuple[FigureChange, ...] = ()
    rules: tuple[RuleChange, ...] = ()
    verdicts: tuple[VerdictChange, ...] = ()
    results: tuple[FigureChange, ...] = ()
    times: tuple[FigureChange, ...] = ()  # fit days and dates that both states know
    items: tuple[ItemChange, ...] = ()
    owed: tuple[OwedDocument, ...] = ()  # documents that are newly required
    settled: tuple[OwedDocument, ...] = ()  # documents that are required no longer
    documents: tuple[DocumentChange, ...] = ()

    @property
    def none(self) -> bool:
        """Whether nothing differs but the issue itself."""
        told = (self.fields, self.limits, self.rules, self.verdicts, self.results, self.times, self.items, self.owed)
        return not any(told) and not self.settled and not self.documents
