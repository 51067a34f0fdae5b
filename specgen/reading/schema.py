"""The schema files to the catalogue of fields: every field once, in the order of the files."""

from collections.abc import Callable, Iterable, Iterator
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Any, NamedTuple

from specgen import standards
from specgen.model.field import Collection, Field, Node, Path, Schema, dotted
from specgen.model.standard import Standards
from specgen.reading.entries import make_entry, shape_of
from specgen.standards import check_against, load_files, load_standards
from specgen.standards.rows import RowError, Wrong, read_rows
from specgen.standards.shapes import Known, Shape

FOLDER = FilePath(__file__).parent / "schema"
# The order in which a project is told; a new file joins the end by its name.
_ORDER = [
    "package",
    "project",
    "contract",
    "code",
    "elevations",
    "walls",
    "joints",
    "coats",
    "equipment",
    "people",
    "mockup",
    "schedule",
    "papers",
    "records",
]


@lru_cache(maxsize=1)
def project_schema() -> Schema:
    """The whole catalogue; raises RowError where an entry of it is wrong, or what a row of the standards says of it."""
    return checked_schema(FOLDER, standards.FOLDER, load_standards())


def checked_schema(folder: FilePath, standards_folder: FilePath, rows: Standards) -> Schema:
    """The catalogue of a folder, and the rows of the standards checked against it; raises RowError.

    Here both are at hand for the first time. All of it takes 3 ms, so that it is done at every start.
    """
    schema = read_schema(folder, rows)
    check_against(schema, standards_folder, load_files(standards_folder))
    return schema


def read_schema(folder: FilePath, rows: Standards) -> Schema:
    """The catalogue in the files of a folder, the names of steps and criteria in place; raises RowError."""
    known = Known({"steps": rows.steps, "criteria": rows.criteria}, {})
    entries = [entry for file in sorted(folder.glob("*.yaml"), key=_order) for entry in _entries(file, known)]
    _refuse_twice(entries)
    fields = {entry.made.path: entry.made for entry in entries if isinstance(entry.made, Field)}
    collections = {entry.made.path: entry.made for entry in entries if isinstance(entry.made, Collection)}
    schema = Schema(fields, collections, _tree(entries, collections))
    for path, entry in {_above(entry.made.path): entry for entry in entries}.items():
        entry.tell(_check_place, path, schema)
    for entry in entries:
        entry.tell(entry.shape.check_fields, entry.written, schema)
    return schema


def _order(file: FilePath) -> tuple[int, str]:
    return (_ORDER.index(file.stem) if file.stem in _ORDER else len(_ORDER), file.stem)


class _Entry(NamedTuple):
    """An entry as it is written, and what was made of it."""

    file: FilePath
    name: str
    written: Any
    """A mapping, as its shape has made sure."""
    shape: Shape
    made: Field | Collection

    def tell(self, check: Callable[..., None], *what: Any) -> None:
        """Run a check; what it finds wrong is told with the place of this entry."""
        try:
            check(*what)
        except Wrong as wrong:
            raise RowError(self.file, wrong.inside(self.name)) from None


def _entries(file: FilePath, known: Known) -> Iterator[_Entry]:
    for name, entry in read_rows(file).items():
        try:
            shape = shape_of(entry, known)
            made = make_entry(tuple(name.split(".")), shape.convert(entry, known))
        except Wrong as wrong:
            raise RowError(file, wrong.inside(name)) from None
        yield _Entry(file, name, entry, shape, made)


def _refuse_twice(entries: Iterable[_Entry]) -> None:
    first: dict[tuple[type, Path], _Entry] = {}
    for entry in entries:
        key = type(entry.made), entry.made.path
        if key in first:
            wrong = Wrong(f"this stands also in {first[key].file.name}, as {first[key].name}", "keep one of them")
            raise RowError(entry.file, wrong.inside(entry.name))
        first[key] = entry


def _above(path: Path) -> Path:
    """What a path stands below; the members themselves where it is theirs."""
    return path if path[-1] == "*" else path[:-1]


def _check_place(path: Path, schema: Schema) -> None:
    """Raise Wrong where a path goes through a field, or through members that no entry tells of."""
    for depth in range(1, len(path) + 1):
        above = path[:depth]
        if above in schema.collections:
            continue
        if above[-1] == "*":
            raise Wrong(f"no entry tells what {dotted(above)} are", f"write an entry {dotted(above)} of kind mapping")
        if above in schema.fields:
            raise Wrong(f"{dotted(above)} is a field and holds no others", "give this another path")


def _tree(entries: list[_Entry], collections: dict[Path, Collection]) -> Node:
    root = Node(())
    for made in (entry.made for entry in entries):
        node = _node_at(root, _starred(made.path, collections), made.path)
        if isinstance(made, Field):
            node.field = made
    for entry in entries:
        if isinstance(entry.made, Collection):
            members = _node_at(root, entry.made.path, entry.made.path)
            if members.field is None and not members.children and members.star is None:
                hint = f"write one, such as {dotted(entry.made.path)}.kind"
                raise RowError(entry.file, Wrong("no field stands below this collection", hint, (entry.name,)))
            _node_at(root, entry.made.path[:-1], entry.made.path[:-1]).collection = entry.made
    return root


def _starred(path: Path, collections: dict[Path, Collection]) -> Path:
    """Record lists leave their star out of the path; the tree has it."""
    if len(path) > 1 and path[1] != "*" and (path[0], "*") in collections:
        return (path[0], "*", *path[1:])
    return path


def _node_at(node: Node, way: Path, path: Path) -> Node:
    """The node that a way leads to, those on it made where there are none; `path` is what it is called."""
    for depth, name in enumerate(way, 1):
        below = node.star if name == "*" else node.children.get(name)
        if below is None:
            below = Node(path[:depth])
            if name == "*":
                node.star = below
            else:
                node.children[name] = below
        node = below
    return node
