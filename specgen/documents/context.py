"""What documents are composed from, and tables as data."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from specgen.documents.display_values import DisplayValue, raw_value, with_unit
from specgen.model.absence import Absent
from specgen.model.field import Field, Path
from specgen.model.figure_text import fill_figures
from specgen.model.finding import Judgment
from specgen.model.project import Project
from specgen.model.source import Kind
from specgen.model.standard import Standards
from specgen.model.value_text import value_text
from specgen.quantities.comparison import Sense
from specgen.quantities.quantity import Quantity
from specgen.resolving.limits_in_force import figure_alone, limit_in_force, plan_source, print_limit
from specgen.resolving.provider import Resolver

# The project's own values are not marked: a value without a mark is the project's own.
# Which side of a figure is right, where figures stand in a list.
_SIDES = {Sense.AT_LEAST: ", minimum", Sense.AT_MOST: ", maximum"}
_UNMARKED = {Kind.PROJECT}


@dataclass(frozen=True)
class DocumentContext:
    """What a document is composed from: the project, trade standards, judgment, and computed values."""

    project: Project
    standards: Standards
    judgment: Judgment
    resolve: Resolver

    @property
    def first(self) -> str:
        """The unit system printed first, `ip` or `si`."""
        return self.project.system

    def display(self, path: Path) -> DisplayValue:
        """The value at a path as it prints."""
        field = self.project.schema.node(path).field
        assert field is not None
        try:
            value = self.project.value(path)
        except Absent:
            return DisplayValue(f"[{field.label}]", open=True)
        source = plan_source(self.project, path, field, self.standards)
        counts = isinstance(value, (Quantity, int, Fraction, float)) and not isinstance(value, bool)
        marked = counts and source.kind not in _UNMARKED
        text = self._usual_text(path, value, field) or self.text(value, field)
        return DisplayValue(text, raw_value(value), source if marked else None, about=field.label)

    def _usual_text(self, path: Path, value: Any, field: Field) -> str:
        """The metric figure that stands where the project gives none, by itself; empty for any other value."""
        limit = self.standards.bounding.get(field.path)
        if path in self.project.values or limit is None or value is not limit.value_si:
            return ""
        return print_limit(self.project, limit, value)

    def text(self, value: Any, field: Field | None) -> str:
        """The value in words, with the unit of its field."""
        text = value_text(value, field, self.first)
        if field is None or isinstance(value, Quantity) or not isinstance(value, (int, Fraction, float)):
            return text
        return (
            with_unit(text, "%" if field.kind == "percent" else field.unit_ip) if not isinstance(value, bool) else text
        )

    def describe_absence(self, absent: Absent) -> tuple[DisplayValue, str]:
        """An open value, and the missing field it waits for."""
        field = self.project.schema.field_at(absent.path)
        return DisplayValue("[open]", open=True), f"waits for: {field.label if field else absent.path[-1]}"

    def computed(self, name: str) -> DisplayValue:
        """The value of a calculation for the project itself, with its source; open where a field it needs is absent."""
        try:
            working = self.resolve((), name)
        except Absent as absent:
            return self.describe_absence(absent)[0]
        return DisplayValue(value_text(working.quantity, None, self.first), working.quantity, working.source[0])

    def limit(self, name: str) -> DisplayValue:
        """The figure in force of a row of the limits, with its source."""
        limit = self.standards.limits[name]
        value, source = limit_in_force(self.project, limit)
        text = print_limit(self.project, limit, value)
        about = fill_figures(limit.about[:1].upper() + limit.about[1:], self.figure) + _SIDES.get(limit.sense, "")
        return DisplayValue(
            with_unit(text, limit.unit), value, source if source.kind not in _UNMARKED else None, about=about
        )

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
