"""Loads the schema files to the catalogue of fields: every field once, in the order of the files."""

from collections.abc import Callable, Iterable, Iterator
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Any, NamedTuple

from specgen import standards
from specgen.model.field import Collection, Field, Node, Path, Schema, dotted_path
from specgen.model.standard import Standards
from specgen.reading.entries import check_order, make_entry, shape_of
from specgen.standards import check_against, load_files, load_standards
from specgen.standards.rows import RowError, Wrong, read_rows
from specgen.standards.shapes import Known, Shape

FOLDER = FilePath(__file__).parent / "schema"
# The order of the sections; new files follow at the end by name.
_ORDER = [
    "package",
    "project",
    "contract",
    "code",
    "elevations",
    "details",
    "walls",
    "joints",
    "coats",
    "equipment",
    "people",
    "mockup",
    "schedule",
    "papers",
    "answers",
    "records",
]


@lru_cache(maxsize=1)
def project_schema() -> Schema:
    """The whole catalogue; raises RowError for a wrong entry, or a row of the standards that does not fit it."""
    return checked_schema(FOLDER, standards.FOLDER, load_standards())


def checked_schema(folder: FilePath, standards_folder: FilePath, rows: Standards) -> Schema:
    """The catalogue of a folder, and the rows of the standards checked against it; raises RowError.

    Both are available here for the first time. It takes 3 ms, so it is done at every start.
    """
    schema = read_schema(folder, rows)
    check_against(schema, standards_folder, load_files(standards_folder))
    return schema


def read_schema(folder: FilePath, rows: Standards) -> Schema:
    """The catalogue in the files of a folder, the names of steps and criteria in place; raises RowError."""
    known = Known({"steps": rows.steps, "criteria": rows.criteria}, {})
    entries = [entry for file in sorted(folder.glob("*.yaml"), key=_order) for entry in _entries(file, known)]
    _refuse_twice(entries)
    fields = {entry.definition.path: entry.definition for entry in entries if isinstance(entry.definition, Field)}
    collections = {
        entry.definition.path: entry.definition for entry in entries if isinstance(entry.definition, Collection)
    }
    schema = Schema(fields, collections, _tree(entries, collections))
    for path, entry in {_parent_path(entry.definition.path): entry for entry in entries}.items():
        entry.run_check(_check_place, path, schema)
    for entry in entries:
        entry.run_check(entry.shape.check_fields, entry.written, schema)
        if isinstance(entry.definition, Field):
            entry.run_check(check_order, entry.definition, schema)
    return schema


def _order(file: FilePath) -> tuple[int, str]:
    return (_ORDER.index(file.stem) if file.stem in _ORDER else len(_ORDER), file.stem)


class _Entry(NamedTuple):
    """An entry as written, and the field or collection it defines."""

    file: FilePath
    name: str
    written: Any
    """A mapping, as its shape has made sure."""
    shape: Shape
    definition: Field | Collection

    def run_check(self, check: Callable[..., None], *what: Any) -> None:
        """Run a check; raises RowError with the place of this entry for what it finds wrong."""
        try:
            check(*what)
        except Wrong as wrong:
            raise RowError(self.file, wrong.inside(self.name)) from None


def _entries(file: FilePath, known: Known) -> Iterator[_Entry]:
    for name, entry in read_rows(file).items():
        try:
            shape = shape_of(entry, known)
            definition = make_entry(tuple(name.split(".")), shape.convert(entry, known))
        except Wrong as wrong:
            raise RowError(file, wrong.inside(name)) from None
        yield _Entry(file, name, entry, shape, definition)


def _refuse_twice(entries: Iterable[_Entry]) -> None:
    first: dict[tuple[type, Path], _Entry] = {}
    for entry in entries:
        key = type(entry.definition), entry.definition.path
        if key in first:
            wrong = Wrong(f"this stands also in {first[key].file.name}, as {first[key].name}", "keep one of them")
            raise RowError(entry.file, wrong.inside(entry.name))
        first[key] = entry


def _parent_path(path: Path) -> Path:
    """The path of the parent; that of the members themselves if it is theirs."""
    return path if path[-1] == "*" else path[:-1]


def _check_place(path: Path, schema: Schema) -> None:
    """Raise Wrong if a path goes through a field, or through members that no entry describes."""
    for depth in range(1, len(path) + 1):
        above = path[:depth]
        if above in schema.collections:
            continue
        if above[-1] == "*":
            raise Wrong(
                f"no entry tells what {dotted_path(above)} are", f"write an entry {dotted_path(above)} of kind mapping"
            )
        if above in schema.fields:
            raise Wrong(f"{dotted_path(above)} is a field and holds no others", "give this another path")


def _tree(entries: list[_Entry], collections: dict[Path, Collection]) -> Node:
    root = Node(())
    for definition in (entry.definition for entry in entries):
        node = _node_at(root, _add_star(definition.path, collections), definition.path)
        if isinstance(definition, Field):
            node.field = definition
    for entry in entries:
        if isinstance(entry.definition, Collection):
            members = _node_at(root, entry.definition.path, entry.definition.path)
            if members.field is None and not members.children and members.star is None:
                hint = f"write one, such as {dotted_path(entry.definition.path)}.kind"
                raise RowError(entry.file, Wrong("no field stands below this collection", hint, (entry.name,)))
            _node_at(root, entry.definition.path[:-1], entry.definition.path[:-1]).collection = entry.definition
    return root


def _add_star(path: Path, collections: dict[Path, Collection]) -> Path:
    """The path with the star that record lists leave out; the tree has it."""
    if len(path) > 1 and path[1] != "*" and (path[0], "*") in collections:
        return (path[0], "*", *path[1:])
    return path


def _node_at(node: Node, way: Path, path: Path) -> Node:
    """The node at the end of `way`, creating missing nodes; `path` is the path new nodes get."""
    for depth, name in enumerate(way, 1):
        child = node.star if name == "*" else node.children.get(name)
        if child is None:
            child = Node(path[:depth])
            if name == "*":
                node.star = child
            else:
                node.children[name] = child
        node = child
    return node
