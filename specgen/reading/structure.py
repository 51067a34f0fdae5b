"""Checks plain data against the tree of the schema and flattens it to records of leaves.

The walk is our own: Cerberus would make a new nested validator for each mapping of each member, and does not know the
place of each value.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any

from specgen.model.field import Node, Path
from specgen.reading.marks import find_alike, find_mark_fault
from specgen.reading.positions import Text
from specgen.reading.shape_hints import show_list, show_member, show_members, show_section
from specgen.reading.unknown import TBD

_SHAPES: dict[Any, str] = {dict: "values by name", list: "a list", str: "a single value"}
# Each member is judged by every clause about its kind; the largest project that is foreseen has 2,000 of one kind.
MOST_MEMBERS = 20_000


@dataclass
class Record:
    """The leaves of one member, or of the file itself, by path; `node` is its place in the schema.

    A value under an unknown name is a leaf too, whatever its shape: the rules refuse it.
    """

    node: Node
    path: Path
    leaves: dict[Path, Any] = field(default_factory=dict)


@dataclass
class Structure:
    """All records of one file, the marks of each collection that it gives, and those of members without a value yet."""

    records: list[Record] = field(default_factory=list)
    members: dict[Path, tuple[str, ...]] = field(default_factory=dict)
    unfilled: dict[Path, tuple[str, ...]] = field(default_factory=dict)


def build_structure(text: Text, root: Node) -> Structure:
    """The records of a file; problems of structure are noted on `text`."""
    structure = Structure()
    record = Record(root, ())
    structure.records.append(record)
    _section(text, structure, record, root, (), text.data)
    return structure


def _section(text: Text, structure: Structure, record: Record, node: Node, path: Path, data: dict[str, Any]) -> None:
    for key, value in data.items():
        child = node.children.get(key)
        if child is None:
            record.leaves[path + (key,)] = value
        elif value is not TBD:
            _child(text, structure, record, child, path + (key,), value)


def _child(text: Text, structure: Structure, record: Record, node: Node, path: Path, value: Any) -> None:
    if node.field is not None:
        _leaf(text, record, node, path, value)
    elif node.star is not None:
        _collection(text, structure, record, node, path, value)
    elif isinstance(value, dict):
        _section(text, structure, record, node, path, value)
    else:
        text.problem(path, f"values by name are wanted here, not {_shape(value)}", show_section(node, value))


def _leaf(text: Text, record: Record, node: Node, path: Path, value: Any) -> None:
    assert node.field is not None
    listed = node.field.kind == "list"
    if listed and isinstance(value, str):
        text.problem(path, "a list is wanted here", show_list(node.field, value))
    elif listed != isinstance(value, list) or isinstance(value, dict):
        wanted = "a list" if listed else "a single value"
        text.problem(path, f"{wanted} is wanted here, not {_shape(value)}", f"for example {node.field.example}")
    else:
        record.leaves[path] = value


def _collection(text: Text, structure: Structure, record: Record, node: Node, path: Path, value: Any) -> None:
    collection, star = node.collection, node.star
    assert collection is not None and star is not None
    wanted = list if collection.kind == "items" else dict
    if not isinstance(value, wanted):
        form = "a list is" if wanted is list else f"{collection.label.lower()} under marks are"
        text.problem(path, f"{form} wanted here, not {_shape(value)}", show_members(collection, star, value))
        return
    if len(value) > MOST_MEMBERS:
        message = f"these are {len(value):,} entries, more than any project has"
        text.problem(path, message, f"at most {MOST_MEMBERS:,}; split the project")
        return
    entries = list(_entries(text, path, value))
    # A mark alone names a member; of a collection of values it names none.
    empty = {
        mark: None
        for mark, entry in entries
        if not (entry is TBD and star.field is None) and _is_unfilled(text, (*path, mark), entry)
    }
    if empty:
        structure.unfilled[path] = tuple(empty)
    if not entries or len(empty) < len(entries):
        structure.members[path] = tuple(mark for mark, _ in entries if mark not in empty)
    if wanted is dict and not collection.keys:
        _tell_alike(text, path, (mark for mark, _ in entries))
    for mark, entry in entries:
        here = path + (mark,)
        if collection.keys and mark not in collection.keys:
            record.leaves[here] = entry
        elif star.field is not None:
            _leaf(text, record, node.below(mark) or star, here, entry) if entry is not TBD else None
        elif isinstance(entry, dict):
            member = Record(star, here)
            structure.records.append(member)
            _section(text, structure, member, star, here, entry)
        elif entry is not TBD:
            message = f"values by name are wanted here, not {_shape(entry)}"
            before = list(value)[: list(value).index(mark)] if mark in star.children else []
            level = f"{mark} belongs below {before[-1]}: indent it further than that" if before else ""
            text.problem(here, message, level or show_member(star, entry))


def _entries(text: Text, path: Path, value: Any) -> Iterator[tuple[str, Any]]:
    for mark, entry in enumerate(value) if isinstance(value, list) else value.items():
        fault = find_mark_fault(mark) if isinstance(mark, str) else None
        if fault is not None:
            text.problem((*path, str(mark)), *fault)
        else:
            yield str(mark), entry


def _is_unfilled(text: Text, path: Path, entry: Any) -> bool:
    """Whether a member has keys and no value yet, as in a starter: a collection of such members is not given.

    One of which a value is said to be unknown is given.
    """
    if not isinstance(entry, (dict, list)):
        return entry is TBD and path in text.empty
    pairs = entry.items() if isinstance(entry, dict) else enumerate(entry)
    return bool(entry) and all(_is_unfilled(text, (*path, str(name)), value) for name, value in pairs)


def _tell_alike(text: Text, path: Path, marks: Iterable[str]) -> None:
    """Note each mark that is taken for another one, with the lines of both."""
    for mark, earlier, fault, hint in find_alike(marks):
        here, there = (text.places[path + (one,)].line for one in (mark, earlier))
        message = f"{mark!r} in line {here} is taken for {earlier!r} in line {there}: {fault}"
        text.problem(path + (mark,), message, hint)


def _shape(value: Any) -> str:
    return _SHAPES.get(type(value), "nothing")
