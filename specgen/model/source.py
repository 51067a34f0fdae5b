"""Sources of figures: every printed figure has one."""

from dataclasses import dataclass, field
from enum import Enum
from typing import Any, NamedTuple


class Kind(Enum):
    """Kind of source; the value is its name in a legend."""

    PUBLISHED = "published"
    PRACTICE = "common practice, no source"
    MEMORY = "from memory"
    MAKER = "manufacturer's figure"
    PROJECT = "project"
    COMPUTED = "computed"
    DEVIATION = "deviation"


class PublishedText(NamedTuple):
    """A published text: its title, who wrote or issued it, and its year or edition."""

    title: str
    issuer: str
    year: str

    @property
    def name(self) -> str:
        """Title, issuer and year, none said twice."""
        return ", ".join((self.title, *(part for part in (self.issuer, self.year) if part not in self.title)))


@dataclass(frozen=True, slots=True)
class Source:
    """A kind and, for a published or manufacturer's figure, the document it is in; `short` is its short name."""

    kind: Kind
    reference: str = ""
    short: str = field(default="", compare=False)

    def quote(self, what: str) -> "Source":
        """The source with a statement of what it says, as printed under a calculation."""
        name = self.short or self.reference
        return Source(self.kind, f"{name}: {what}" if name else what)

    @property
    def legend(self) -> str:
        """The line printed at the foot of a document."""
        confirm = ": confirm with the manufacturer's written instructions"
        if self.kind is Kind.MEMORY and self.reference:
            return f"{self.kind.value} ({self.reference}): confirm against that text"
        if self.kind is Kind.PUBLISHED:
            return self.reference
        if self.kind in (Kind.PRACTICE, Kind.MEMORY):
            return f"{_short(self)}{confirm}"
        return f"{self.kind.value}: {self.reference}" if self.reference else self.kind.value


class InForce(NamedTuple):
    """The figure in force of a limit, and its source."""

    value: Any
    source: Source


PRACTICE = Source(Kind.PRACTICE)
MEMORY = Source(Kind.MEMORY)
PROJECT = Source(Kind.PROJECT, "this project's description")


@dataclass(frozen=True, slots=True)
class Basis:
    """What a clause rests on: one source or several."""

    sources: tuple[Source, ...]

    def __str__(self) -> str:
        return "; ".join(s.reference if s.kind is Kind.PUBLISHED else _short(s) for s in self.sources)


def _short(source: Source) -> str:
    return f"{source.kind.value} ({source.reference})" if source.reference else source.kind.value
