"""Whose figure counts: the coating source's own beats the trade's, and each brings its source."""

from typing import Any, NamedTuple

from specgen.model.field import Field, Path
from specgen.model.project import Project
from specgen.model.source import PRACTICE, PROJECT, Kind, Source
from specgen.model.standard import Limit, Standards
from specgen.standards import load_limits


class InForce(NamedTuple):
    """The figure of a limit that counts, and its source."""

    value: Any
    source: Source


def limit_in_force(project: Project, limit: Limit) -> InForce:
    """The figure a project is judged by: the coating source's own where it gives one, else the row."""
    if limit.field is not None and limit.field in project.maker:
        return InForce(project.maker[limit.field], maker_source(project, limit.field))
    return InForce(limit.value, limit.source)


def find_limit(name: str, project: Project | None = None) -> InForce:
    """The figure in force of a row of the limits; that of the row itself where no project is given."""
    limit = load_limits()[name]
    return InForce(limit.value, limit.source) if project is None else limit_in_force(project, limit)


def maker_source(project: Project, path: Path) -> Source:
    """The paper a coating source's figure stands in: the instructions of its own coat, else those of the gloss."""
    section = project.schema.root.children[path[0]]
    own = path[0] if "instructions" in section.children else "gloss"
    paper = project.get((own, "instructions"))
    title = project.get((*paper.path, "title")) if paper is not None else None
    return Source(Kind.MAKER, f"{title} ({paper.mark})" if title else "coating system file")


def plan_source(project: Project, path: Path, field: Field, standards: Standards) -> Source:
    """Where the plan's value at a path comes from: the project, the coating source, or the catalogue's default."""
    if path in project.values:
        own = project.values[path] is not project.maker.get(path)
        return PROJECT if own else maker_source(project, path)
    for limit in standards.limits.values():
        if limit.field == field.path:
            return limit.source
    return PRACTICE
