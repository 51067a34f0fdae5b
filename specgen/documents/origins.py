"""Where an input of a calculation comes from: a field and its file, another calculation, or the method itself."""

from dataclasses import dataclass
from pathlib import PurePath

from specgen.documents.context import DocumentContext
from specgen.model.field import Path, bound, dotted
from specgen.model.project import Project
from specgen.model.source import Source
from specgen.model.working import InputRow


@dataclass(frozen=True, slots=True)
class Origin:
    """Where an input comes from in words, and the source behind its figure where it is not the project's own."""

    text: str
    source: Source | None = None


def find_origin(context: DocumentContext, member: Path, row: InputRow) -> Origin:
    """The origin of an input of a member, as its calculation declares it."""
    if row.origin in context.resolve.names:
        return Origin(_computed(context, member, row.origin), row.source)
    path = followed(context.project, row.origin, member)
    if path is not None:
        return Origin(_field(context, path), row.source or context.display(path).source)
    return Origin(_members(context, row.origin) or row.origin, row.source)


def followed(project: Project, pattern: str, member: Path) -> Path | None:
    """The field a pattern leads to for a member, through references; None where it is no path or a link is absent."""
    at: Path = ()
    try:
        for name in bound(pattern, member):
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


def _field(context: DocumentContext, path: Path) -> str:
    """`Moving length (joints.J1.panel_length), project.yaml`; a default says so."""
    project = context.project
    field = project.schema.node(path).field
    assert field is not None
    if path in project.values:
        file = PurePath(project.place(path).file).name
        return f"{field.label} ({dotted(path)}){f', {file}' if file else ''}"
    return f"{field.label} ({dotted(path)}): not given, the usual value"


def _members(context: DocumentContext, origin: str) -> str:
    """As `_field`, for the path of a collection; empty where it is none."""
    project, path = context.project, tuple(origin.split("."))
    if path not in project.members:
        return ""
    collection = project.schema.node(path).collection
    assert collection is not None
    file = PurePath(project.place(path).file).name
    return f"{collection.label} ({origin}){f', {file}' if file else ''}"


def _computed(context: DocumentContext, member: Path, name: str) -> str:
    at = context.resolve.member(member, name)
    title = context.resolve.find(name).title
    return f"computed: {title[:1].lower()}{title[1:]}{f', {at[-1]}' if at else ''}"
