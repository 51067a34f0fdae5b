"""Whose figure counts: the coating source's own beats the trade's, and each brings its source."""

from specgen.model.field import Field, Path
from specgen.model.project import Project
from specgen.model.source import PRACTICE, PROJECT, InForce, Kind, Source
from specgen.model.standard import Limit, Standards


def limit_in_force(project: Project | None, limit: Limit) -> InForce:
    """The figure a project is judged by: the coating source's own where it gives one, else that of the row."""
    figure = limit.maker_figure
    if project is not None and figure is not None and figure in project.maker:
        return InForce(project.maker[figure], maker_source(project, figure))
    return InForce(limit.value, limit.source)


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
        return maker_source(project, path) if path in project.from_maker else PROJECT
    for limit in standards.limits.values():
        if limit.bounds == field.path:
            return limit.source
    return PRACTICE
