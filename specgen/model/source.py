"""Where a number comes from. Every number a reader meets carries one of these."""

from dataclasses import dataclass, field
from enum import Enum
from typing import Any, NamedTuple


class Kind(Enum):
    """What stands behind a number; the value is what a legend calls it."""

    PUBLISHED = "published"
    PRACTICE = "common practice, no source"
    MEMORY = "from memory"
    MAKER = "maker's figure"
    PROJECT = "project"
    COMPUTED = "computed"


@dataclass(frozen=True, slots=True)
class Source:
    """A kind and, for a published or a maker's figure, the paper it stands in; `short` names it where much is said."""

    kind: Kind
    reference: str = ""
    short: str = field(default="", compare=False)

    def saying(self, what: str) -> "Source":
        """The source with what stands in it, as the sources of a calculation are told."""
        name = self.short or self.reference
        return Source(self.kind, f"{name}: {what}" if name else what)

    @property
    def legend(self) -> str:
        """The line printed at the foot of a document."""
        confirm = ": confirm with the maker's written instructions"
        if self.kind is Kind.MEMORY and self.reference:
            return f"{self.kind.value} ({self.reference}): confirm against that text"
        if self.kind is Kind.PUBLISHED:
            return self.reference
        if self.kind in (Kind.PRACTICE, Kind.MEMORY):
            return f"{self.kind.value}{confirm}"
        return f"{self.kind.value}: {self.reference}" if self.reference else self.kind.value


class InForce(NamedTuple):
    """The figure of a limit that counts, and its source."""

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
