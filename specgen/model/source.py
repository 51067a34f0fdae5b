"""Sources of figures: every printed figure has one."""

import re
from dataclasses import dataclass, field
from enum import Enum
from typing import Any, NamedTuple

# What stands before the text in the source of a metric figure, and what a text has in its name.
_OF_TWIN = re.compile(r"^metric figure for .*? of ")
# The number of a standard, behind which stands what it is cited for.
_STANDARD = re.compile(r"((?:ASTM|ISO) [A-Z]?\d[\d-]*)(?:, [^;]*)?")
_TEXT = re.compile(r"[A-Z]{3}|\b(Code|Standard|Handbook)\b")


class Kind(Enum):
    """Kind of source; the value is its name in a legend."""

    PUBLISHED = "published"
    PRACTICE = "common practice, no source"
    MEMORY = "from memory"
    MAKER = "manufacturer's figure"
    PROJECT = "project"
    COMPUTED = "computed"
    DEVIATION = "deviation"
    ANSWER = "answered by"
    # As documents cite any of these:
    CITED = "cited"
    UNVERIFIED = "not verified"


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
    """A kind and, for a published or manufacturer's figure, the document it is in; `short` is its short name.

    `controls` is what documents cite; `elsewhere` tells that the figure was read in another text than that one.
    `behind` is the source that a document cites as not verified.
    """

    kind: Kind
    reference: str = ""
    short: str = field(default="", compare=False)
    controls: str = field(default="", compare=False)
    elsewhere: bool = field(default=False, compare=False)
    behind: "Source | None" = field(default=None, compare=False)

    @property
    def is_verified(self) -> bool:
        """Whether a text stands behind the figure that documents can cite."""
        return bool(self.controls) or not (self.elsewhere or self.kind in (Kind.PRACTICE, Kind.MEMORY))

    @property
    def text_to_check(self) -> str:
        """The name of the text to hold a figure against, without what it says; empty where none is known."""
        said = self.controls or ("" if self.elsewhere else _OF_TWIN.sub("", self.short or self.reference))
        name = said.partition(": ")[0]
        return _STANDARD.sub(r"\1", name) if _TEXT.search(name) else ""

    def quote(self, what: str) -> "Source":
        """The source with a statement of what it says, as printed under a calculation."""
        name = self.short or self.reference
        controls = f"{self.controls}: {what}" if self.controls else ""
        return Source(self.kind, f"{name}: {what}" if name else what, "", controls, self.elsewhere)

    @property
    def legend(self) -> str:
        """The line printed at the foot of a document."""
        if self.kind is Kind.UNVERIFIED:
            return "Proposed, not verified; see D05"
        confirm = ": confirm with the manufacturer's written instructions"
        if self.kind is Kind.MEMORY and self.reference:
            return f"{self.kind.value} ({self.reference}): confirm against that text"
        if self.kind in (Kind.PUBLISHED, Kind.CITED):
            return self.reference
        if self.kind in (Kind.PRACTICE, Kind.MEMORY):
            return f"{_short(self)}{confirm}"
        if self.kind is Kind.ANSWER:
            return f"Answered by {self.reference}"
        told = f"{self.kind.value}: {self.reference}" if self.reference else self.kind.value
        return f"{told[:1].upper()}{told[1:]}"


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
    if source.kind is Kind.ANSWER:
        return f"{source.kind.value} {source.reference}"
    return f"{source.kind.value} ({source.reference})" if source.reference else source.kind.value
