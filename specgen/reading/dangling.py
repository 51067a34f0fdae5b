"""Marks that find nothing: a fault, or an open item where a side file points into another file."""

from collections.abc import Iterable, Iterator
from typing import Any, NamedTuple

from specgen.model.field import Field, Path, Schema
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.suggest import suggest
from specgen.reading.file_content import FileContent


class Dangling(NamedTuple):
    """A mark that finds nothing: the path of its field, and the problem it makes."""

    path: Path
    field: Field
    problem: Problem


def find_dangling(project: Project) -> Iterator[Dangling]:
    """Every mark that is given and is that of no member."""
    marks: dict[str, dict[str, None]] = {}
    for path, value in project.values.items():
        field = project.schema.field_at(path)
        if field is not None and field.to:
            known = marks.setdefault(field.to, dict.fromkeys(project.members.get((field.to,), ())))
            for mark in value if isinstance(value, tuple) else (value,):
                if mark not in known:
                    yield Dangling(path, field, _describe(project, field, path, mark, known))


def find_unmet(dangling: Iterable[Dangling], sides: Iterable[FileContent]) -> dict[Path, str]:
    """Of the marks that find nothing those of side files that give no such members themselves, each with what is wrong.

    A firm file is kept from job to job: what it points at in a project file stands there once the job has come so far.
    """
    given = {side.text.file: side.members for side in sides}
    return {
        one.path: f"{one.problem.message}{f'; {one.problem.hint}' if one.problem.hint else ''}"
        for one in dangling
        if one.problem.file in given and (one.field.to,) not in given[one.problem.file]
    }


def _describe(project: Project, field: Field, path: Path, mark: str, known: Iterable[str]) -> Problem:
    place = project.place(path)
    message, hint = tell_dangling(project.schema, field, mark, known)
    return Problem(message, hint, place.path, place.file, place.line, place.column)


def tell_dangling(schema: Schema, field: Field, mark: Any, known: Iterable[str]) -> tuple[str, str]:
    """What is wrong with a mark that finds nothing, and what may be meant."""
    collection = schema.collections[(field.to, "*")]
    hint = suggest(mark, known) if known else f"no {collection.label.lower()} are given"
    return f"there is no {collection.one} {mark!r}", hint
