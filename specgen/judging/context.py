"""What clauses are judged with: the project, trade standards, and the resolver of computed values."""

from dataclasses import dataclass
from typing import Any

from specgen.model.absence import Absent
from specgen.model.project import Project
from specgen.model.standard import Standards
from specgen.resolving.limits_in_force import limit_in_force
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

    def look(self, name: str) -> Any:
        """The answer of a look-up for the whole project, or None if a field it needs is absent."""
        try:
            return self.resolve((), name).result
        except Absent:
            return None
