"""Where an input of a calculation comes from: a field, another calculation, or the method itself."""

from dataclasses import dataclass

from specgen.documents.context import DocumentContext
from specgen.documents.tested_values import find_report_source
from specgen.model.field import Path, bind_path
from specgen.model.project import Project
from specgen.model.source import Source
from specgen.model.working import METHOD, UNIT_CHANGE, InputRow
from specgen.resolving.answer_sources import answer_source


@dataclass(frozen=True, slots=True)
class Origin:
    """The source of the figure of an input, if that is not the project's own, and what else there is to say of it."""

    source: Source | None = None
    default: bool = False  # whether it stands where the project gives none
    calculation: str = ""  # the name of the calculation it comes from
    words: str = ""  # how it was found, if neither field nor calculation tells it


def find_origin(context: DocumentContext, member: Path, row: InputRow) -> Origin:
    """The origin of an input of a member, as its calculation declares it."""
    if row.origin in context.resolve.names:
        return Origin(row.source, calculation=row.origin)
    path = follow(context.project, row.origin, member)
    if path is not None:
        source = row.source or context.display(path).source or answer_source(context.project, path)
        source = source or find_report_source(context, path)
        return Origin(source, default=path not in context.project.values)
    told = is_of_method(row) or tuple(row.origin.split(".")) in context.project.members
    return Origin(row.source, words="" if told else row.origin)


def is_of_method(row: InputRow) -> bool:
    """Whether an input is a constant of the method or a change of units."""
    return row.origin in (METHOD, UNIT_CHANGE)


def follow(project: Project, pattern: str, member: Path) -> Path | None:
    """The path a pattern leads to for a member, through references; None if it is no path or a link is missing."""
    at: Path = ()
    try:
        for name in bind_path(pattern, member):
            field = project.schema.node(at).field
            if field is not None:
                linked = project.get(at)
                if linked is None or field.kind != "reference":
                    return None
                at = linked.path
            at += (name,)
        return at if project.schema.node(at).field is not None and "*" not in at else None
    except KeyError:
        return None
