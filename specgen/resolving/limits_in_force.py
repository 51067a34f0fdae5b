"""The figures in force: the coating manufacturer's own overrides that of the trade, each with its source."""

from specgen.model.field import Field, Path
from specgen.model.project import Project
from specgen.model.source import PRACTICE, PROJECT, InForce, Kind, Source
from specgen.model.standard import Limit, Standards


def limit_in_force(project: Project | None, limit: Limit) -> InForce:
    """The figure a project is judged by: the coating manufacturer's if it gives one, else that of the row."""
    figure = limit.maker_figure
    if project is not None and figure is not None and figure in project.maker:
        return InForce(project.maker[figure], maker_source(project, figure))
    return InForce(limit.figure("ip" if project is None else project.system), limit.source)


def maker_source(project: Project, path: Path) -> Source:
    """The document with a manufacturer's figure: the instructions of the coat itself, else those of the gloss."""
    section = project.schema.root.children[path[0]]
    own = path[0] if "instructions" in section.children else "gloss"
    document = project.get((own, "instructions"))
    title = project.get((*document.path, "title")) if document is not None else None
    return Source(Kind.MAKER, f"{title} ({document.mark})" if title else "coating system file")


def plan_source(project: Project, path: Path, field: Field, standards: Standards) -> Source:
    """Where the plan's value at a path comes from: the project, the coating manufacturer, or a default."""
    if path in project.values:
        return maker_source(project, path) if path in project.from_maker else PROJECT
    for limit in standards.limits.values():
        if limit.bounds == field.path:
            return limit.source
    return PRACTICE
