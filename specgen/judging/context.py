"""What clauses are judged with: the project, trade standards, and the resolver of computed values."""

from dataclasses import dataclass
from typing import Any

from specgen.model.absence import Absent
from specgen.model.field import Field
from specgen.model.figure_text import fill_figures
from specgen.model.project import Project
from specgen.model.standard import Standards
from specgen.model.value_text import raw_text, value_text
from specgen.resolving.limits_in_force import figure_alone, limit_in_force, print_limit
from specgen.resolving.provider import Resolver


@dataclass(frozen=True)
class JudgingContext:
    """The project, the standards and the resolver of computed values."""

    project: Project
    standards: Standards
    resolve: Resolver

    @property
    def first(self) -> str:
        """The unit system printed first, `ip` or `si`."""
        return self.project.system

    def limit(self, name: str) -> Any:
        """The figure in force of a row of the limits."""
        return limit_in_force(self.project, self.standards.limits[name])[0]

    def print_if_limit(self, value: Any) -> str:
        """The value in words if it is the metric figure of a row, which prints without inches; else an empty text."""
        limits = self.standards.limits.values() if self.first == "si" and value is not None else ()
        return next((print_limit(self.project, row, value) for row in limits if row.value_si is value), "")

    def text(self, value: Any, field: Field | None) -> str:
        """A value as a message says it, in the project's own units."""
        return value_text(value, field, self.first, self.project.both_units)

    def data_text(self, value: Any, field: Field | None) -> str:
        """A value as data tell it: choices by their names, quantities in both unit systems."""
        return raw_text(value, field, self.first)

    def fill(self, text: str) -> str:
        """A text of a rule with the figures it asks for, each in the project's own unit."""
        return fill_figures(text, lambda name: figure_alone(self.project, self.standards.limits[name]))

    def look(self, name: str) -> Any:
        """The answer of a look-up for the whole project, or None if a field it needs is absent."""
        try:
            return self.resolve((), name).result
        except Absent:
            return None
