"""Rows of the trade's data: limits, steps, criteria, tools, each with its source."""

from dataclasses import dataclass
from functools import cached_property
from typing import Any, NamedTuple

from specgen.model.field import Path
from specgen.model.finding import Severity
from specgen.model.source import Source
from specgen.quantities.comparison import Sense


class Limit(NamedTuple):
    """A limit of the trade: its figure, which side of it is right, and its source."""

    name: str
    value: Any
    """A Quantity, a bare number if `unit` is given, or a word."""
    sense: Sense
    source: Source
    about: str
    """What it is the limit of, in the middle of a sentence."""
    value_si: Any = None
    """The figure of metric work where the trade uses a rounder one than the conversion; None for the same."""
    source_si: Source | None = None
    """Where the figure of metric work is written; None where that of `value` holds for both."""
    unit: str = ""
    """The unit of a bare number, as it prints."""
    bounds: Path | None = None
    """The field it bounds: it prints in the units of this field, and is the source of this field's default."""
    maker_figure: Path | None = None
    """The same field if the coating manufacturer may set it: then the manufacturer's figure replaces the limit."""

    def figure(self, system: str) -> Any:
        """The figure that governs in a unit system, `ip` or `si`."""
        return self.value_si if system == "si" and self.value_si is not None else self.value

    def source_of(self, system: str) -> Source:
        """Where the figure that governs in a unit system is written."""
        return self.source_si if system == "si" and self.source_si is not None else self.source


class Sentence(NamedTuple):
    """A sentence of a step as a template, the condition under which it is said, and of whom it is said.

    `faults` is yes for one after which the mending of each fault of the substrate is said.
    """

    text: str
    when: str = ""
    faults: bool = False
    each: str = "walls"
    """The collection it is said of each member of; members of which it says the same share one sentence."""
    otherwise: str = ""
    """What is said in its place where a value it prints, or the whole collection, is not given."""


class Fault(NamedTuple):
    """A fault of a substrate: how grave it is until it is mended, and how it is mended."""

    name: str
    severity: Severity
    mend: str


class Step(NamedTuple):
    """A step of the work; `title`, `waits`, the sentences and the cautions print, the last three as templates."""

    name: str
    title: str
    point: str
    """H (hold), W (witness), R (review) or E (carried out and recorded)."""
    article: str
    """The article of a procedure that it belongs to, such as examination."""
    sentences: tuple[Sentence, ...]
    follows: str = ""
    """The name of the step before it; empty for the first."""
    point_of: str = ""
    """The part of the step that is the point, such as the first pass; empty for the whole of it."""
    waits: tuple[Sentence, ...] = ()
    """What must have happened before it begins, each behind the words `Do not begin until`."""
    released_by: Path | None = None
    """The field that names the party who releases it; None for whoever releases the hold points."""
    records: tuple[str, ...] = ()
    """The forms that it fills, by name."""
    when: str = ""
    """The condition under which a wall takes this step; empty for every wall."""
    cautions: tuple[Sentence, ...] = ()
    once: bool = False
    """Whether it is carried out once for all elevations."""
    releases: str = ""
    """The step whose work it releases, where it has none of its own; empty for any other."""


class FieldTest(NamedTuple):
    """A test of the work: what is tested, at which step, by which standard, how often, by which limit, by whom."""

    name: str
    test: str
    step: str
    """The step of the work after which it is made."""
    standard: str
    frequency: str
    limit: Sentence
    by: str
    """Who makes it: applicator or inspector."""
    form: str = ""
    """The name of the form it is written on; empty for those of its step."""
    when: str = ""
    """The condition under which a wall has this test; empty for every wall."""
    at: str = ""
    """What is witnessed, where the test is a witness point by itself and no part of the point of its step."""
    lines: tuple[str, ...] = ()
    """What is read, a line each; one empty text for the test as a whole, none for a test without readings."""


class ListedCheck(NamedTuple):
    """A line of the check list of a third-party inspector."""

    name: str
    check: Sentence


class SafetyMeasure(NamedTuple):
    """A measure of the safety plan: against what, by which law, what is done, and who sees to it."""

    name: str
    hazard: str
    clause: tuple[Source, ...]
    """The rules of law it follows; none where no federal rule asks for it."""
    measure: tuple[Sentence, ...]
    by: str
    """The role of the person who sees to it."""
    when: str = ""
    """The condition under which a wall asks for it; empty for every wall."""


class Criterion(NamedTuple):
    """A line of the mockup acceptance form: what is judged, how, by which limit, how often and where."""

    name: str
    title: str
    method: str
    """How it is read, as a template."""
    instrument: str
    """The kind of instrument, as a list of instruments names it."""
    limit: str
    """The figure or the words it is judged by, as a template; its `governing` is the part below."""
    readings: str
    """How many readings are asked for: a number, or words where a number alone does not say it."""
    location: str
    basis: tuple[Source, ...]
    """Where the limit is written."""
    when: str = ""
    """The condition under which a wall of the mockup has this line; empty for every wall."""
    boxes: str = ""
    """How many readings have a box, where `readings` is not a number."""
    box_each: tuple[Path, ...] = ()
    """What has one box each, in place of `boxes`: the fields that count coats; joints by size, mesh by zone."""
    for_each: Path = ()
    """The field that counts the coats, or the members, each of which has these readings; empty for one set."""
    mean: bool = False
    """Whether the mean of the readings is asked for."""
    shows: tuple[str, ...] = ()
    """The details of the mockup at which it is read, as `mockup.includes` names them."""
    part: str = ""
    """The part of the mockup at which it is read where no detail names it."""
    for_record: bool = False
    """Whether it is written down and not judged."""
    spare: bool = False
    """Whether the panel of the spare gun is read by the same line."""
    governing: str = ""
    """The figure of the limit, as a template: a stricter one of the project takes its place."""
    least: tuple[Path, ...] = ()
    """The fields of that figure below which no reading may lie."""
    most: tuple[Path, ...] = ()
    """The fields of that figure above which no reading may lie."""
    within: tuple[Path, ...] = ()
    """The field of the figure aimed at, and that of its tolerance either way."""


class Tool(NamedTuple):
    """A thing the crew must bring besides usual plastering tools."""

    name: str
    what: str
    """What it is, as a template that begins with words."""
    step: str
    """The name of the step before which it is checked for."""
    when: str = ""
    """The condition under which a project needs it; empty for every project."""


class Reference(NamedTuple):
    """A published standard that a procedure refers to."""

    name: str
    title: str
    source: Source
    """Where the title was read."""
    when: str = ""
    """The condition under which a project meets it; empty for every project."""


@dataclass(frozen=True, kw_only=True)
class Standards:
    """All rows by name: the steps in the order of the work, all others in that of their files."""

    sources: dict[str, Source]
    limits: dict[str, Limit]
    steps: dict[str, Step]
    field_tests: dict[str, FieldTest]
    step_checks: dict[str, FieldTest]
    """What is looked at besides the tests in place."""
    third_party_checks: dict[str, ListedCheck]
    safety_measures: dict[str, SafetyMeasure]
    criteria: dict[str, Criterion]
    tools: dict[str, Tool]
    forms: dict[str, str]
    """The title of each form, with its name."""
    references: dict[str, Reference]
    editions: dict[str, dict[str, Any]]
    """What moves between editions of the building code, by edition: sections with their sources, a wind standard."""
    faults: dict[str, Fault]
    """The faults of a substrate by their choice in its field."""

    @cached_property
    def bounding(self) -> dict[Path, Limit]:
        """The limit that bounds each field: the first of several."""
        return {row.bounds: row for row in reversed(self.limits.values()) if row.bounds is not None}
