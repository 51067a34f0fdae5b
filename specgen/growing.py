"""The story of a project file that grows: what it lacks up to a stage is added, each field empty below its comment."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path as FilePath

from specgen.editing.add_values import add_values
from specgen.editing.edit import Addition, Edit
from specgen.judging.context import JudgingContext
from specgen.judging.missing_fields import find_missing
from specgen.judging.open_items import owed_rings
from specgen.model.field import Path, Schema
from specgen.model.project import Project
from specgen.pipeline import make_resolver, read
from specgen.reading.file_text import read_content
from specgen.standards import load_standards
from specgen.terminal.field_lines import MARKS
from specgen.terminal.starter import PURPOSES, tell_empty_field, tell_made

_PURPOSE = ("package", "purpose")


@dataclass(frozen=True)
class Grown:
    """A project file as it was and as it is edited, what its package was for and is for now.

    `elsewhere` counts the fields that are missing in a side file by the name of that file.
    """

    before: bytes
    edit: Edit
    old_purpose: str
    purpose: str
    elsewhere: dict[str, int]


def grow(file: FilePath, stage: str) -> Grown:
    """The file with all that it lacks up to a stage; raises Refused with every fault of its files."""
    shown = file.name or str(file)
    before, project = read_content(file, shown), read(file)
    context = JudgingContext(project, load_standards(), make_resolver(project))
    missing = find_missing(project, stage, context.look, MARKS)
    old = str(project.value(_PURPOSE))
    purpose = _raise_purpose(old, stage)
    additions = [*_list_additions(project, missing.paths), Addition(_PURPOSE, purpose, replaces=True)]
    edit = add_values(before, additions, project.schema, shown, _tell_sections(project.schema, missing.paths))
    elsewhere = {str(project.values[(side,)]): count for side, count in missing.elsewhere.items()}
    return Grown(before, edit, old, purpose, elsewhere)


def _raise_purpose(purpose: str, stage: str) -> str:
    """What a package is for at the end of a stage, or what it is for already where that comes later."""
    wanted = PURPOSES[stage]
    return wanted if len(owed_rings(wanted)) > len(owed_rings(purpose)) else purpose


def _list_additions(project: Project, paths: Iterable[Path]) -> Iterator[Addition]:
    """Empty keys; the first one of a field has its whole comment, the next ones in other members its name."""
    told: set[Path] = set()
    for path in paths:
        field = project.schema.node(path).field
        assert field is not None
        if field.path in told:
            yield Addition(path, "", field.label)
        else:
            yield Addition(path, "", "\n".join(tell_empty_field(field, path[-1], 2 * (len(path) - 1), project.system)))
        told.add(field.path)


def _tell_sections(schema: Schema, paths: Iterable[Path]) -> dict[Path, str]:
    """The words over each section on the way to these fields, for those that are made new; none over a member."""
    ways = dict.fromkeys(path[:depth] for path in paths for depth in range(1, len(path)))
    return {way: "\n".join(tell_made(schema.node(way), way)) for way in ways if schema.node(way).path[-1] != "*"}
