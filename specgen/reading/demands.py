"""What the contract demands, checked as it is read: its field is known, its marks are, and its value fits."""

from collections.abc import Iterator

from specgen.model.field import Field, Path, dotted
from specgen.model.problem import Problem
from specgen.model.project import Project
from specgen.model.suggest import near_hint
from specgen.reading.conversion import InvalidValue
from specgen.reading.demand import demanded, has_order

_DEMANDS = ("contract", "demands")


def demand_problems(project: Project) -> list[Problem]:
    """Every demand on a field that there is not, for a mark that is not given, or of a value that does not fit."""
    return [
        problem
        for number in project.members.get(_DEMANDS, ())
        if (*_DEMANDS, number, "field") in project.values
        for problem in _of_demand(project, (*_DEMANDS, number))
    ]


def _of_demand(project: Project, demand: Path) -> Iterator[Problem]:
    text = project.values[(*demand, "field")]
    pattern = tuple(text.split("."))
    made = project.schema.field_at(pattern)
    if made is None:
        known = [dotted(path) for path, field in project.schema.fields.items() if field.home != "record"]
        yield _problem(project, (*demand, "field"), f"{text!r} is no field of this file", near_hint(text, known))
        return
    yield from _marks(project, demand, pattern)
    yield from _value(project, demand, made)


def _value(project: Project, demand: Path, made: Field) -> Iterator[Problem]:
    relation, value = project.get((*demand, "relation")), project.get((*demand, "value"))
    if relation in ("<=", ">=") and not has_order(made):
        message = f"{made.label[0].lower()}{made.label[1:]} cannot be more or less"
        yield _problem(project, (*demand, "relation"), message, "write = or in")
    elif relation is not None and value is not None:
        try:
            demanded(made, relation, value)
        except InvalidValue as invalid:
            yield _problem(project, (*demand, "value"), invalid.message, invalid.hint)


def _marks(project: Project, demand: Path, pattern: Path) -> Iterator[Problem]:
    """Marks that no given member bears; a collection that is still absent may hold any."""
    known: list[str] = []
    for depth, name in enumerate(pattern):
        if project.schema.node(pattern[:depth]).star is None:
            continue
        members = [m for path, m in project.members.items() if _through(path, pattern[:depth])]
        if not members:
            return
        marks = [mark for group in members for mark in group]
        if name != "*" and name not in marks:
            yield _problem(project, (*demand, "field"), f"{name!r} is the mark of nothing here", near_hint(name, marks))
        known += marks if name == "*" else []
    for mark in project.get((*demand, "for")) or ():
        if mark not in known:
            message = f"{mark!r} is the mark of nothing this field stands in"
            yield _problem(project, (*demand, "for"), message, near_hint(mark, known))


def _through(path: Path, pattern: Path) -> bool:
    """Whether a pattern stands for a path."""
    return len(path) == len(pattern) and all(name in ("*", mark) for name, mark in zip(pattern, path, strict=True))


def _problem(project: Project, path: Path, message: str, hint: str) -> Problem:
    place = project.place(path)
    return Problem(message, hint, place.path, place.file, place.line, place.column)
