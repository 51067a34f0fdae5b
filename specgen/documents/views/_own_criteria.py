"""The project's own acceptance criteria, and the standard lines that each names."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from specgen.documents.context import DocumentContext
from specgen.model.field import Path
from specgen.model.standard import Criterion

# A criterion of this name covers no standard line, though the name of one begins with it.
ADDED = "other"
_STANDARD = re.compile(r"\b[A-Z]\d{3,4}\b")


@dataclass(frozen=True)
class Own:
    """A criterion of the project."""

    path: Path
    name: str
    method: str
    limit: str
    readings: int

    def find_covered(self, lines: list[Criterion]) -> list[Criterion]:
        """The line of its name, or those that begin with it; where its method names the standard of some, these."""
        exact = [line for line in lines if line.name == self.name]
        covered = exact or [line for line in lines if line.name.startswith(self.name) and self.name != ADDED]
        named = set(_STANDARD.findall(self.method))
        return [line for line in covered if named & set(_STANDARD.findall(line.method))] or covered


def own_criteria(context: DocumentContext) -> Iterator[Own]:
    """The own criteria in their order; one without a name names no line."""
    path = ("mockup", "criteria")
    for number in context.project.members.get(path, ()):
        member = (*path, number)
        name, method, limit, readings = (
            context.project.get((*member, column)) for column in ("name", "method", "limit", "readings")
        )
        yield Own(member, str(name or ADDED), str(method or ""), str(limit or ""), int(readings or 0))
