"""Finds the field that a dotted path of a sheet names in a project; a mark may hold points of its own."""

from collections.abc import Iterable
from typing import NamedTuple

from specgen.model.field import Field, Node, Path, dotted_path
from specgen.model.project import Project
from specgen.model.suggest import suggest
from specgen.reading.conversion import InvalidValue


class FoundField(NamedTuple):
    """A field and its path."""

    path: Path
    field: Field


def find_field(project: Project, text: str) -> FoundField:
    """The field at a dotted path; raises InvalidValue where the project has no such field or member (any more)."""
    path: Path = ()
    node, rest = project.schema.root, text.strip()
    while rest:
        name, rest = _take_mark(project, node, path, rest) if node.star else _take_name(node, rest)
        child = node.below(name)
        assert child is not None
        node, path = child, (*path, name)
    if node.field is None:
        raise InvalidValue(f"{text or 'the cell'} names no field", _HINT)
    return FoundField(path, node.field)


_HINT = "leave the column Field as it was sent"


def _take_name(node: Node, rest: str) -> tuple[str, str]:
    """The first name of a path below a section, and what follows."""
    name, _, rest = rest.partition(".")
    if name not in node.children:
        raise InvalidValue(
            f"{name!r} is the name of no field", suggest(name, node.children) if node.children else _HINT
        )
    return name, rest


def _take_mark(project: Project, node: Node, path: Path, rest: str) -> tuple[str, str]:
    """The mark of a member that a path goes on with, and what follows: the longest there is."""
    collection = node.collection
    assert collection is not None
    marks = collection.keys or project.members.get(path, ())
    # A member whose values all stand empty is none yet, but has its place.
    places = (place[-1] for place in project.places if place[:-1] == path)
    found = _find_first(marks, rest) or _find_first(places, rest)
    if not found:
        mark = rest.partition(".")[0]
        message = f"the project no longer has a {collection.one} {mark!r}"
        raise InvalidValue(message, suggest(mark, marks) if marks else f"the project has none at {dotted_path(path)}")
    mark = max(found, key=len)
    return mark, rest[len(mark) + 1 :]


def _find_first(marks: Iterable[str], rest: str) -> list[str]:
    return [mark for mark in marks if rest == mark or rest.startswith(f"{mark}.")]
