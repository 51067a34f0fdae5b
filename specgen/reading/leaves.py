"""The text of each leaf to the type its field has; faults are noted on the file."""

from collections.abc import Iterator
from typing import Any

from specgen.model.field import Field, Node, Path
from specgen.reading.conversion import fitted
from specgen.reading.positions import Text
from specgen.reading.structure import Record


def converted(text: Text, record: Record) -> dict[Path, Any]:
    """The typed values of a record by path; faults are noted on `text`."""
    values: dict[Path, Any] = {}
    for path, raw in record.leaves.items():
        made = _field(record.node, path[len(record.path) :])
        if made.kind == "list":
            values[path] = tuple(_items(text, made, path, raw))
        else:
            value, fault = fitted(made, raw)
            if fault:
                text.problem(path, *fault)
            else:
                values[path] = value
    return values


def _items(text: Text, made: Field, path: Path, raw: list[Any]) -> Iterator[Any]:
    for number, item in enumerate(raw):
        here = path + (str(number),)
        if not isinstance(item, str):
            text.problem(here, "a single value is wanted here", f"for example {made.example}")
            continue
        value, fault = fitted(made, item)
        if fault:
            text.problem(here, *fault)
        else:
            yield value


def _field(node: Node, path: Path) -> Field:
    for name in path:
        node = node.star if node.star is not None else node.children[name]
    assert node.field is not None
    return node.field
