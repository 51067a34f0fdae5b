"""Rows of the trade's data: limits, steps, criteria, tools, each with its source."""

from dataclasses import dataclass
from typing import Any

from specgen.model.field import Path
from specgen.model.source import Source
from specgen.quantities.comparison import Sense


@dataclass(frozen=True, slots=True)
class Limit:
    """A figure of the trade: which side of it is right, and where it is written.

    `value` is a Quantity, or a bare number with `unit` for its print; `field` is the field
    it bounds: the coating source's own figure for that field takes the limit's place.
    """

    name: str
    value: Any
    sense: Sense
    source: Source
    about: str = ""
    unit: str = ""
    field: Path | None = None


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence of a step as a template, and the condition under which it is said."""

    text: str
    when: str = ""


@dataclass(frozen=True, slots=True)
class Step:
    """A step of the work; `point` is H (hold), W (witness), R (review) or E (carried out and recorded)."""

    name: str
    order: int
    title: str
    point: str
    point_of: str
    wait: str
    sentences: tuple[Sentence, ...]
    records: tuple[str, ...] = ()
    when: str = ""
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Criterion:
    """A line of the mockup acceptance form; `limit` is a template."""

    name: str
    title: str
    method: str
    instrument: str
    limit: str
    readings: str
    location: str
    basis: tuple[Source, ...]
    when: str = ""


@dataclass(frozen=True, slots=True)
class Tool:
    """A thing the crew must bring besides usual plastering tools."""

    name: str
    what: str
    why: str
    step: str
    when: str = ""


@dataclass(frozen=True, slots=True)
class Reference:
    """A published standard that a procedure refers to, and the projects that meet it."""

    name: str
    title: str
    source: Source
    when: str = ""


@dataclass(frozen=True)
class Standards:
    """All rows by name, in the order of their files."""

    sources: dict[str, Source]
    limits: dict[str, Limit]
    steps: dict[str, Step]
    criteria: dict[str, Criterion]
    tools: dict[str, Tool]
    forms: dict[str, str]
    references: dict[str, Reference]
    editions: dict[str, dict[str, str]]
