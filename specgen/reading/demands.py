"""Checks each requirement of the contract on reading: known field, known marks, valid value."""

from collections.abc import Iterator
from functools import partial
from itertools import chain

from specgen.model.field import Field, Path, dotted_path
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.suggest import suggest
from specgen.reading.conversion import InvalidValue
from specgen.reading.demand import convert_demand, has_order

_DEMANDS = ("contract", "demands")


def demand_problems(project: Project) -> list[Problem]:
    """Problems of all requirements: an unknown field, an unknown mark, or a value that does not fit the field."""
    return [
        problem
        for number in project.members.get(_DEMANDS, ())
        if (*_DEMANDS, number, "field") in project.values
        for problem in _check_demand(project, (*_DEMANDS, number))
    ]


def _check_demand(project: Project, demand: Path) -> Iterator[Problem]:
    text = project.values[(*demand, "field")]
    pattern = tuple(text.split("."))
    field = project.schema.field_at(pattern)
    if field is None:
        known = [dotted_path(path) for path, field in project.schema.fields.items() if field.home != "record"]
        yield _problem(project, (*demand, "field"), f"{text!r} is no field of this file", suggest(text, known))
        return
    yield from _check_marks(project, demand, pattern)
    yield from _check_value(project, demand, field)


def _check_value(project: Project, demand: Path, field: Field) -> Iterator[Problem]:
    relation, value = project.get((*demand, "relation")), project.get((*demand, "value"))
    if relation in ("<=", ">=") and not has_order(field):
        message = f"{field.label[0].lower()}{field.label[1:]} cannot be more or less"
        yield _problem(project, (*demand, "relation"), message, "write = or in")
    elif relation is not None and value is not None:
        try:
            convert_demand(field, relation, value)
        except InvalidValue as invalid:
            yield _problem(project, (*demand, "value"), invalid.message, invalid.hint)


def _check_marks(project: Project, demand: Path, pattern: Path) -> Iterator[Problem]:
    """Problems with marks that no member has; a collection that is still absent may have any."""
    known: list[dict[str, None]] = []
    for depth, name in enumerate(pattern):
        if project.schema.node(pattern[:depth]).star is None:
            continue
        marks = project.remember(("marks", pattern[:depth]), partial(_find_marks, project, pattern[:depth]))
        if marks is None:
            return
        if name != "*" and name not in marks:
            yield _problem(project, (*demand, "field"), f"nothing here has the mark {name!r}", suggest(name, marks))
        known += [marks] if name == "*" else []
    for mark in project.get((*demand, "for")) or ():
        if not any(mark in marks for marks in known):
            message = f"no member with this field has the mark {mark!r}"
            yield _problem(project, (*demand, "for"), message, suggest(mark, chain(*known)))


def _find_marks(project: Project, pattern: Path) -> dict[str, None] | None:
    """The marks in the collections that match a pattern; None if none is given."""
    paths: list[Path] = [()]
    for name in pattern:
        paths = [p + (m,) for p in paths for m in (project.members.get(p, ()) if name == "*" else (name,))]
    groups = [project.members[path] for path in paths if path in project.members]
    return dict.fromkeys(mark for marks in groups for mark in marks) if groups else None


def _problem(project: Project, path: Path, message: str, hint: str) -> Problem:
    place = project.place(path)
    return Problem(message, hint, place.path, place.file, place.line, place.column)
