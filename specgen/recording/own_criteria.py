"""The project's own acceptance criteria, and the standard lines that each names."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from specgen.model.field import Path
from specgen.model.project import Project
from specgen.model.standard import Criterion
from specgen.model.value_text import words

# A criterion of this name covers no standard line, though the name of one begins with it.
ADDED = "other"
_STANDARD = re.compile(r"\b[A-Z]\d{3,4}\b")
_TITLES = {"look": "Appearance", "film": "Film thickness", "water": "Flashings"}  # where a name alone does not say it


@dataclass(frozen=True)
class Own:
    """A criterion of the project."""

    path: Path
    name: str
    method: str
    limit: str
    readings: int

    @property
    def title(self) -> str:
        """What it is called where it has a line of its own."""
        if self.name == ADDED:
            return "Project criterion"
        return f"{_TITLES.get(self.name) or words(self.name).capitalize()}: project criterion"

    def find_covered(self, lines: Sequence[Criterion]) -> list[Criterion]:
        """The line of its name, or those that begin with it; where its method names the standard of some, these."""
        exact = [line for line in lines if line.name == self.name]
        covered = exact or [line for line in lines if line.name.startswith(self.name) and self.name != ADDED]
        named = set(_STANDARD.findall(self.method))
        return [line for line in covered if named & set(_STANDARD.findall(line.method))] or covered


def list_own_criteria(project: Project) -> Iterator[Own]:
    """The own criteria in their order; one without a name names no line."""
    path = ("mockup", "criteria")
    for number in project.members.get(path, ()):
        member = (*path, number)
        name, method, limit, readings = (
            project.get((*member, column)) for column in ("name", "method", "limit", "readings")
        )
        yield Own(member, str(name or ADDED), str(method or ""), str(limit or ""), int(readings or 0))
