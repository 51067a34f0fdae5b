"""Which fields a project owes at all, and which walls a subject speaks of."""

from ..vocabulary.condition import Look, holds
from ..vocabulary.field import Path
from ..vocabulary.project import Project


def applicable(project: Project, path: Path, look: Look | None = None) -> bool:
    """Whether someone owes a value here: not optional, and its `if` holds as far as it can be judged."""
    node = project.schema.node(path)
    if node.field is not None:
        made = node.field
        return made.ring != "optional" and (not made.condition or holds(made.condition, project, path, look))
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
    if collection == "colors" and len(subject) > 1:
        faces = [
            e for e in project.members.get(("elevations",), ()) if _is(project, ("elevations", e, "color"), subject[1])
        ]
        return tuple(dict.fromkeys(w for e in faces for w in _wall_of(project, e))) or every
    return every


def _wall_of(project: Project, elevation: str) -> tuple[str, ...]:
    wall = project.get(("elevations", elevation, "wall"))
    return () if wall is None else (wall.mark,)


def _is(project: Project, path: Path, mark: str) -> bool:
    other = project.get(path)
    return other is not None and other.mark == mark


def waited_for(project: Project, path: Path) -> bool:
    """Whether a clause waits for this field: it applies, or it is to be worked out from others that are absent."""
    made = project.schema.field_at(path)
    return applicable(project, path) or (made is not None and bool(made.derived))
