"""The figures in force: the coating manufacturer's own overrides that of the trade, each with its source."""

from typing import Any

from specgen.model.field import Field, Path
from specgen.model.project import Project
from specgen.model.source import PRACTICE, PROJECT, InForce, Kind, Source
from specgen.model.standard import Limit, Standards
from specgen.model.value_text import units_of, value_text
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity
from specgen.resolving.answer_sources import answer_source
from specgen.resolving.stated_figures import find_stating


def limit_in_force(project: Project | None, limit: Limit, system: str = "ip") -> InForce:
    """The figure a project is judged by: the coating manufacturer's if it gives one, else that of the row.

    A paper of the project that states the figure of the row is its source.

    Without a project it is that of the row in a unit system.
    """
    figure = limit.maker_figure
    if project is not None and figure is not None and figure in project.maker:
        return InForce(project.maker[figure], answer_source(project, figure) or maker_source(project, figure))
    system = system if project is None else project.system
    figure = limit.figure(system)
    stated = None if project is None else find_stating(project, limit.name, figure)
    return InForce(figure, stated or limit.source_of(system))


def print_limit(project: Project, limit: Limit, value: Any) -> str:
    """A figure a project is judged by, in its own words; one of metric work stands without that of inches.

    The two are no conversion of each other, so that each alone is a figure of the trade.
    """
    if project.system == "si" and limit.value_si is not None and value == limit.value_si:
        return format_quantity(limit.value_si, limit.value_si.unit)
    field = project.schema.field_at(limit.bounds) if limit.bounds else None
    return value_text(value, field, project.system, project.both_units)


def figure_alone(project: Project | None, limit: Limit) -> str:
    """The figure of a row by itself, as a tool is named by it: `10 ft`, in an SI project `3 m`; without one both."""
    if project is None:
        ip, si = (_print_figure(limit.figure(system), system, limit.unit) for system in ("ip", "si"))
        return ip if ip == si else f"{ip} ({si})"
    return _print_figure(limit_in_force(project, limit).value, project.system, limit.unit)


def _print_figure(value: Any, system: str, unit: str) -> str:
    if isinstance(value, Quantity):
        return format_quantity(value, units_of(value, None)[0 if system == "ip" else 1])
    return f"{value_text(value)} {unit}".rstrip()


def maker_source(project: Project, path: Path) -> Source:
    """The document with a manufacturer's figure: the instructions of the coat itself, else those of the gloss."""
    section = project.schema.root.children[path[0]]
    own = path[0] if "instructions" in section.children else "gloss"
    document = project.get((own, "instructions"))
    title = project.get((*document.path, "title")) if document is not None else None
    return Source(Kind.MAKER, f"{title} ({document.mark})" if title else "coating system file")


def given_source(project: Project, path: Path) -> Source:
    """Where a given value comes from: an answer of another party, the coating source, or the project itself."""
    answered = answer_source(project, path)
    if answered is not None:
        return answered
    return maker_source(project, path) if path in project.from_maker else PROJECT


def plan_source(project: Project, path: Path, field: Field, standards: Standards) -> Source:
    """Where the plan's value at a path comes from: the project, the coating manufacturer, or a default."""
    if path in project.values:
        return given_source(project, path)
    limit = standards.bounding.get(field.path)
    return PRACTICE if limit is None else limit.source_of(project.system)
