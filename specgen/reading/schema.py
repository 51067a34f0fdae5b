"""The schema files to the catalogue of fields: every field once, in the order of the files."""

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Any

from specgen.model.field import Collection, Field, Node, Path, Schema
from specgen.standards import load_standards
from specgen.standards.rows import read_rows

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
_KINDS = {
    "integer",
    "number",
    "percent",
    "text",
    "choice",
    "yes_no",
    "date",
    "time",
    "quantity",
    "reference",
    "file",
    "list",
    "bearing",
}
_COLLECTIONS = {"mapping", "items"}
_RINGS = {"verdict", "mockup", "work", "closeout", "optional"}
_RENAMED = {"if": "condition"}


class SchemaError(ValueError):
    """An entry of the schema is malformed; names its file and path."""


@lru_cache(maxsize=1)
def load_schema(choices: tuple[tuple[str, tuple[str, ...]], ...] = ()) -> Schema:
    """The whole catalogue; `choices` are the named lists (`@steps`) that entries refer to."""
    entries: list[Field | Collection] = []
    for file in sorted(FOLDER.glob("*.yaml"), key=_order):
        for name, entry in read_rows(file).items():
            entries.append(_entry(file, name, entry, dict(choices)))
    fields = {made.path: made for made in entries if isinstance(made, Field)}
    collections = {made.path: made for made in entries if isinstance(made, Collection)}
    if len(fields) + len(collections) < len(entries):
        raise SchemaError("a path stands twice in the schema")
    return Schema(fields, collections, _tree(entries, collections))


def _entry(file: FilePath, name: str, entry: Mapping[str, Any], choices: Mapping[str, Any]) -> Field | Collection:
    path, properties = tuple(name.split(".")), _checked(file, name, entry, choices)
    if entry["kind"] in _COLLECTIONS:
        return Collection(path if path[-1] == "*" else (*path, "*"), **properties)
    return Field(path, **properties)


def _order(file: FilePath) -> tuple[int, str]:
    return (_ORDER.index(file.stem) if file.stem in _ORDER else len(_ORDER), file.stem)


def _checked(file: FilePath, name: str, entry: Mapping[str, Any], choices: Mapping[str, Any]) -> dict[str, Any]:
    kind = entry.get("kind")
    if kind not in _KINDS | _COLLECTIONS or entry.get("ring", "optional") not in _RINGS or not entry.get("label"):
        raise SchemaError(f"{file.name}: {name}: kind, ring or label is missing or not known")
    made = {_RENAMED.get(key, key): value for key, value in entry.items()}
    for key in ("values", "keys"):
        if key in made:
            made[key] = _listed(made[key], choices)
    if "also" in made:
        made["values"] += tuple(made.pop("also"))
    for key in ("optional", "may_be_empty"):
        if key in made:
            made[key] = made[key] == "yes"
    return made


def _listed(values: Any, choices: Mapping[str, Any]) -> tuple[str, ...]:
    if isinstance(values, str) and values.startswith("@"):
        return tuple(choices[values[1:]])
    return tuple(values)


def _tree(entries: list[Field | Collection], collections: dict[Path, Collection]) -> Node:
    root = Node(())
    for made in entries:
        path = made.path
        node = root
        for depth, name in enumerate(_starred(path, collections), 1):
            node = _step(node, name, path[:depth])
        if isinstance(made, Field):
            node.field = made
    for path, collection in collections.items():
        _at(root, path[:-1]).collection = collection
    return root


def _starred(path: Path, collections: dict[Path, Collection]) -> Path:
    """Record lists leave their star out of the path; the tree has it."""
    if path[:1] + ("*",) in collections and len(path) > 1 and path[1] != "*":
        return path[:1] + ("*",) + path[1:]
    return path


def _step(node: Node, name: str, path: Path) -> Node:
    if name == "*":
        node.star = node.star or Node(path)
        return node.star
    return node.children.setdefault(name, Node(path))


def _at(root: Node, path: Path) -> Node:
    node = root
    for name in path:
        node = node.star if name == "*" and node.star else node.children[name]
    return node


@lru_cache(maxsize=1)
def project_schema() -> Schema:
    """The catalogue of fields with the names of steps and criteria in place."""
    rows = load_standards()
    return load_schema((("steps", tuple(rows.steps)), ("criteria", tuple(rows.criteria))))
