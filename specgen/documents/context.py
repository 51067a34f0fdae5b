"""What documents are composed from, and tables as data."""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import Any, TypeVar, cast

from specgen.documents.deviations import deviation_sources
from specgen.documents.display_values import DisplayValue, raw_value, with_unit
from specgen.documents.drafts import Remainder
from specgen.documents.verifiers import ENGINEER, find_reader, find_sealing_day
from specgen.model.absence import Absent
from specgen.model.changes import Changes
from specgen.model.field import Field, Path, dotted_path, matches
from specgen.model.figure_text import fill_figures
from specgen.model.finding import Judgment
from specgen.model.project import InputFile, Project
from specgen.model.record_judgment import RecordJudgment
from specgen.model.source import Kind, Source
from specgen.model.standard import Standards
from specgen.model.value_text import close_percent, long_date, value_text, words
from specgen.quantities.comparison import Sense
from specgen.quantities.format import format_decimal
from specgen.quantities.quantity import Quantity
from specgen.quantities.two_systems import tell_in
from specgen.resolving.editions import fill_editions, name_edition
from specgen.resolving.limits_in_force import figure_alone, limit_in_force, plan_source, print_limit
from specgen.resolving.provider import Resolver

Answer = TypeVar("Answer")

# The project's own values are not marked: a value without a mark is the project's own.
# Which side of a figure is right, where figures stand in a list.
_SIDES = {Sense.AT_LEAST: ", minimum", Sense.AT_MOST: ", maximum"}
_UNMARKED = {Kind.PROJECT}
# Where the working of a computed value and its own sources stand.
OF_A_SUM = Source(Kind.CITED, "Computed; see Calculations, D06")


@dataclass(frozen=True)
class DocumentContext:
    """What a document is composed from: the project, trade standards, judgment, and computed values."""

    project: Project
    standards: Standards
    judgment: Judgment
    resolve: Resolver
    rest: Remainder = Remainder()  # what is known of the other documents, where one tells of them
    changes: Changes | None = None  # what differs from an issued set, where there is one to compare with
    attached: tuple[InputFile, ...] = ()  # the files of its attachments, as they were read
    recorded: RecordJudgment = RecordJudgment()  # how the readings of the site record end
    draft: bool = False  # whether it is to be written as a draft

    @property
    def first(self) -> str:
        """The unit system printed first, `ip` or `si`."""
        return self.project.system

    @property
    def is_marked(self) -> bool:
        """Whether the pages are marked as a draft, on which nobody is to act."""
        return self.draft or self.project.value(("package", "purpose")) == "design_draft"

    @property
    def is_draft(self) -> bool:
        """Whether nothing is submitted: a draft, or a package that stops stand against."""
        return self.is_marked or self.judgment.stopped

    def remember(self, question: Callable[["DocumentContext"], Answer]) -> Answer:
        """The answer of a question that many rows of the documents ask, looked into once."""
        if question not in self._remembered:
            self._remembered[question] = question(self)
        return cast(Answer, self._remembered[question])

    @cached_property
    def _remembered(self) -> dict[Any, Any]:
        return {}

    @cached_property
    def given_sections(self) -> frozenset[Path]:
        """The paths of all sections and members below which anything is given."""
        return frozenset(path[:depth] for path in self.project.values for depth in range(len(path)))

    def display(self, path: Path) -> DisplayValue:
        """The value at a path as it prints."""
        field = self.project.schema.node(path).field
        assert field is not None
        try:
            value = self.project.value(path)
        except Absent:
            return self.ask(path)
        source = plan_source(self.project, path, field, self.standards)
        deviation = self._find_deviation(path)
        counts = isinstance(value, (Quantity, int, Fraction, float)) and not isinstance(value, bool)
        marked = counts and source.kind not in _UNMARKED
        text = self._usual_text(path, value, field) or self.text(value, field)
        bound = None if path in self.project.values else self.standards.bounding.get(field.path)
        said = deviation or (source if marked else None)
        entries = tuple(map(words, value)) if field.of == "choice" else ()
        row = bound.name if bound else ""
        return DisplayValue(text, raw_value(value), said, about=field.label, row=row, entries=entries)

    def ask(self, path: Path) -> DisplayValue:
        """The label of a field or collection that is still to be given, in brackets."""
        node = self.project.schema.node(path)
        told = node.field or node.collection
        return DisplayValue(f"[{told.label if told else path[-1]}]", open=True, asks=dotted_path(path))

    @cached_property
    def _deviations(self) -> dict[Path, tuple[frozenset[str], Source]]:
        return deviation_sources(self.project)

    def _find_deviation(self, path: Path) -> Source | None:
        """The deviation behind a value, which every page that prints the value names."""
        for pattern, (marks, source) in self._deviations.items():
            if len(pattern) == len(path) and matches(pattern, path) and (not marks or marks & set(path)):
                return source
        return None

    def _usual_text(self, path: Path, value: Any, field: Field) -> str:
        """The metric figure that stands where the project gives none, by itself; empty for any other value."""
        limit = self.standards.bounding.get(field.path)
        if path in self.project.values or limit is None or value is not limit.value_si:
            return ""
        return print_limit(self.project, limit, value)

    def name_member(self, path: Path) -> str:
        """The mark of a member, with its name where it has one: `E1 South face`."""
        node = self.project.schema.node(path)
        name = self.project.get((*path, "name")) if "name" in node.children else None
        return f"{path[-1]} {name}" if name else path[-1]

    def text(self, value: Any, field: Field | None) -> str:
        """The value in words, with the unit of its field."""
        text = value_text(value, field, self.first, self.project.both_units)
        if field is None or isinstance(value, Quantity) or not isinstance(value, (int, Fraction, float)):
            return text
        return (
            with_unit(text, "%" if field.kind == "percent" else field.unit_ip) if not isinstance(value, bool) else text
        )

    def tell(self, text: str) -> str:
        """A text of a calculation that says figures in two systems, in that of the project; percent as values print."""
        return close_percent(tell_in(text, "both" if self.project.both_units else self.first))

    def name_text(self, text: str) -> str:
        """A text to hold figures against: by the edition that the project goes by, where it has one."""
        return name_edition(self.tell(text), self.project, self.standards)

    def cite(self, source: Source) -> Source:
        """The source as documents cite it: the controlling text, one and the same for all that is not verified."""
        if source.kind in (Kind.CITED, Kind.UNVERIFIED):
            return source
        if not source.is_verified:
            return Source(Kind.UNVERIFIED, behind=source)
        if source.kind is Kind.MAKER:
            return Source(Kind.CITED, f"Manufacturer's data: {source.reference}")
        if source.kind is Kind.ANSWER:
            return Source(Kind.CITED, source.legend)
        if source.kind in (Kind.COMPUTED, Kind.PROJECT, Kind.DEVIATION):
            return Source(source.kind, self.tell(source.reference))
        said = fill_editions(source.controls or source.short or source.reference, self.project, self.standards)
        if source.elsewhere:
            return Source(Kind.CITED, f"{self.tell(said)}; {self._tell_verified(source)}", behind=source)
        return Source(Kind.CITED, self.tell(said))

    def _tell_verified(self, source: Source) -> str:
        """Whether the engineer has read the text of a figure that was read elsewhere, under the seal."""
        is_read = find_reader(self.project, self.name_text(source.text_to_check)) == ENGINEER
        day = find_sealing_day(self.project) if is_read else None
        return f"verified by the engineer, {long_date(day)}" if day else "not verified, see D05"

    def describe_absence(self, absent: Absent) -> tuple[DisplayValue, str]:
        """An open value, and the missing field it waits for."""
        field = self.project.schema.field_at(absent.path)
        return DisplayValue(
            "[open]", open=True, asks=dotted_path(absent.path)
        ), f"pending: {field.label if field else absent.path[-1]}"

    def computed(self, name: str, path: Path = ()) -> DisplayValue:
        """The value of a calculation for the project, with its source; open for want of a field.

        That for a section or member is rounded as it is read in the work, else to three digits, one behind the point.
        """
        try:
            working = self.resolve(path, name)
        except Absent as absent:
            return self.describe_absence(absent)[0]
        quantity = working.quantity
        as_read = self.resolve.find(name).as_read
        if as_read:
            quantity = as_read(float(working.result), working.unit)
        elif path:
            quantity = Quantity.of(format_decimal(float(working.result), 3, 1), working.unit)
        return DisplayValue(self.text(quantity, None), quantity, OF_A_SUM)

    def limit(self, name: str) -> DisplayValue:
        """The figure in force of a row of the limits, with its source."""
        limit = self.standards.limits[name]
        value, source = limit_in_force(self.project, limit)
        text = print_limit(self.project, limit, value)
        about = fill_figures(limit.about[:1].upper() + limit.about[1:], self.figure) + _SIDES.get(limit.sense, "")
        said = source if source.kind not in _UNMARKED else None
        return DisplayValue(with_unit(text, limit.unit), value, said, about=about, row=name)

    def figure(self, name: str) -> str:
        """The figure in force of a row of the limits by itself, as it names a tool or a length: `10 ft`."""
        return figure_alone(self.project, self.standards.limits[name])


@dataclass(frozen=True)
class TableView:
    """Rows as data for a template to set: `{{ table(joints) }}`; a cell is a value, words, or a list of both.

    Column heads are cells too.
    """

    header: tuple[Any, ...]
    rows: tuple[tuple[Any, ...], ...]
    widths: tuple[int, ...]

    def __len__(self) -> int:
        return len(self.rows)
