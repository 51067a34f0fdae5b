"""Where an input of a calculation comes from: a field and its file, another calculation, or the method itself."""

from dataclasses import dataclass
from pathlib import PurePath

from specgen.documents.context import DocumentContext
from specgen.model.field import Path, bind_path, dotted_path
from specgen.model.project import Project
from specgen.model.source import Source
from specgen.model.working import InputRow


@dataclass(frozen=True, slots=True)
class Origin:
    """Where an input comes from in words, and the source of its figure if that is not the project's own."""

    text: str
    source: Source | None = None


def find_origin(context: DocumentContext, member: Path, row: InputRow) -> Origin:
    """The origin of an input of a member, as its calculation declares it."""
    if row.origin in context.resolve.names:
        return Origin(_describe_computed(context, member, row.origin), row.source)
    path = follow(context.project, row.origin, member)
    if path is not None:
        return Origin(_describe_field(context, path), row.source or context.display(path).source)
    return Origin(_describe_collection(context, row.origin) or row.origin, row.source)


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


def _describe_field(context: DocumentContext, path: Path) -> str:
    """`Moving length (joints.J1.panel_length), project.yaml`; a default is named as such."""
    project = context.project
    field = project.schema.node(path).field
    assert field is not None
    if path in project.values:
        file = PurePath(project.place(path).file).name
        return f"{field.label} ({dotted_path(path)}){f', {file}' if file else ''}"
    return f"{field.label} ({dotted_path(path)}): not given, the usual value"


def _describe_collection(context: DocumentContext, origin: str) -> str:
    """Same as `_describe_field`, for a collection; empty if the path is none."""
    project, path = context.project, tuple(origin.split("."))
    if path not in project.members:
        return ""
    collection = project.schema.node(path).collection
    assert collection is not None
    file = PurePath(project.place(path).file).name
    return f"{collection.label} ({origin}){f', {file}' if file else ''}"


def _describe_computed(context: DocumentContext, member: Path, name: str) -> str:
    at = context.resolve.member(member, name)
    title = context.resolve.find(name).title
    return f"computed: {title[:1].lower()}{title[1:]}{f', {at[-1]}' if at else ''}"
