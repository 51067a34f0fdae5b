"""The subjects of a clause, the walls they belong to, and which fields are owed."""

from collections.abc import Iterable, Iterator
from itertools import chain, product

from specgen.model.absence import Absent
from specgen.model.evaluation import Look, evaluate
from specgen.model.field import Path
from specgen.model.project import Project


def subjects(project: Project, each: Path) -> Iterator[Path | Absent]:
    """The members a clause is judged for; an owed but absent collection is yielded as Absent."""
    if not each:
        yield ()
        return
    paths: list[Path] = [()]
    for name in (*each, "*"):
        longer: list[Path] = []
        for path in paths:
            if name != "*":
                longer.append(path + (name,))
                continue
            try:
                longer += [path + (mark,) for mark in project.marks(path)]
            except Absent as absent:
                yield absent
        paths = longer
    yield from paths


def applicable(project: Project, path: Path, look: Look | None = None) -> bool:
    """Whether a value is owed here: it is not optional, and its `if` holds as far as it is known."""
    node = project.schema.node(path)
    if node.field is not None:
        return node.field.ring != "optional" and project.applies(path, look)
    if node.collection is not None:
        return not node.collection.optional
    return True


def walls_of(project: Project, subject: Path) -> tuple[str, ...]:
    """The marks of the walls a subject belongs to; all of them for one that belongs to the project."""
    every = project.members.get(("walls",), ())
    if not subject:
        return every
    collection = subject[0]
    if collection == "walls":
        return (subject[1],) if len(subject) > 1 else every
    if collection == "elevations" and len(subject) > 1:
        return _wall_of(project, subject[1]) or every
    if collection == "details" and len(subject) > 1:
        face = project.get((*subject[:2], "elevation"))
        return (face and _wall_of(project, face.mark)) or every
    if collection == "colors" and len(subject) > 1:
        in_color = project.remember("walls in each color", lambda: _find_walls_in_colors(project))
        return tuple(in_color.get(subject[1], ())) or every
    return every


def _wall_of(project: Project, elevation: str) -> tuple[str, ...]:
    wall = project.get(("elevations", elevation, "wall"))
    return () if wall is None else (wall.mark,)


def walls_of_all(project: Project, subjects: Iterable[Path]) -> tuple[str, ...]:
    """The marks of the walls that any of these subjects belongs to."""
    every = project.members.get(("walls",), ())
    each = [walls_of(project, subject) for subject in subjects]
    # One that belongs to all of them settles it, so that many subjects of many walls are not gone through.
    return every if any(walls is every for walls in each) else tuple(dict.fromkeys(chain.from_iterable(each)))


def _find_walls_in_colors(project: Project) -> dict[str, dict[str, None]]:
    """The walls that a color stands on, in the order of their faces, by the mark of the color."""
    found: dict[str, dict[str, None]] = {}
    for face in project.members.get(("elevations",), ()):
        color = project.get(("elevations", face, "color"))
        if color is not None:
            found.setdefault(color.mark, {}).update(dict.fromkeys(_wall_of(project, face)))
    return found


def is_waited_for(project: Project, path: Path) -> bool:
    """Whether a clause waits for this field: it applies, is derived from others, or the contract asks for it."""
    if applicable(project, path):
        return True
    field = project.schema.field_at(path)
    if field is None or field.derived:
        return field is not None
    holding = not field.condition or evaluate(field.condition, project, path)
    return field.ring == "optional" and holding and _is_asked_for(project, path)


def _is_asked_for(project: Project, path: Path) -> bool:
    """Whether a requirement of the contract is on this field, or is itself incomplete."""
    if path[:2] == _DEMANDS:
        return path[3:] in (("field",), ("relation",), ("value",))
    demanded = project.remember("demanded fields", lambda: _find_demanded(project))
    pattern = project.schema.node(path).path
    # A demand names each member on the way by its mark, or all of them by a star.
    ways = product(*({name, mark} for name, mark in zip(pattern, path, strict=True)))
    return any(way in demanded for way in ways)


def _find_demanded(project: Project) -> frozenset[Path]:
    """The fields that the contract has a demand on, as they are written."""
    named = (project.values.get((*_DEMANDS, mark, "field")) for mark in project.members.get(_DEMANDS, ()))
    return frozenset(tuple(name.split(".")) for name in named if name)


_DEMANDS = ("contract", "demands")
