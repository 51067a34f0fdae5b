"""The stub of the typed views, written from the schema: `python -m tests.golden` keeps it in the tree."""

from collections.abc import Iterator
from pathlib import Path

from specgen.model import project
from specgen.model.field import Field, Node
from specgen.reading.schema import project_schema

STUB = Path(project.__file__).parent / "typed_views.pyi"
HEAD = '''"""Generated from the schema by `python -m tests.golden`: the type of all that each section and member holds.

Reading a value that the project does not give raises Absent.
"""

import datetime
from fractions import Fraction
from typing import Literal

from specgen.model.project import Members, View
from specgen.quantities.quantity import Quantity

Number = int | Fraction

def root_of(view: View) -> Description: ...

'''
TYPES = {
    "integer": "int",
    "number": "Number",
    "percent": "Number",
    "yes_no": "bool",
    "date": "datetime.date",
    "time": "datetime.time",
    "quantity": "Quantity",
    "bearing": "Quantity",
}
# What every view has under a name of its own; a field of that name is read as `view["name"]`.
TAKEN = {"project", "node", "path", "mark", "get"} | {"from", "class", "in", "is", "with", "for"}


def stub() -> str:
    """The text of the stub."""
    root = project_schema().root
    names = dict(_named(root))
    return HEAD + "\n".join(_class(node, names) for node in _sections(root))


def _sections(node: Node) -> Iterator[Node]:
    """Every section and member, the whole description first."""
    if node.field is None and node.star is None:
        yield node
    for child in (*node.children.values(), *([node.star] if node.star else [])):
        yield from _sections(child)


def _named(root: Node) -> Iterator[tuple[tuple[str, ...], str]]:
    """The name of the class of each section: its own word, with those above it where another has the same."""
    taken: set[str] = set()
    # The shorter way first, so that a section far down bears the longer name.
    for node in sorted(_sections(root), key=lambda node: len(node.path)):
        words = _words(root, node.path)
        name = next(n for depth in range(1, len(words) + 1) if (n := "".join(words[-depth:])) not in taken)
        taken.add(name)
        yield node.path, name


def _words(root: Node, path: tuple[str, ...]) -> list[str]:
    """The words on the way to a section: a member by the noun of its collection."""
    words, node = ["Description"] if not path else [], root
    for name in path:
        if name == "*":
            assert node.collection is not None and node.star is not None
            words[-1] = _camel(node.collection.one)
            node = node.star
        else:
            words.append(_camel(name))
            node = node.children[name]
    return words


def _camel(text: str) -> str:
    return "".join(word[:1].upper() + word[1:] for word in text.replace("-", " ").replace("_", " ").split())


def _class(node: Node, names: dict[tuple[str, ...], str]) -> str:
    lines = [f"class {names[node.path]}(View):"]
    lines += [f"    {name}: {_type(child, names)}" for name, child in node.children.items() if name not in TAKEN]
    return "\n".join(lines if len(lines) > 1 else [*lines, "    ..."]) + "\n"


def _type(node: Node, names: dict[tuple[str, ...], str]) -> str:
    if node.field is not None:
        return _field(node.field, names)
    if node.star is not None:
        return f"Members[{_type(node.star, names)}]"
    return names[node.path]


def _field(field: Field, names: dict[tuple[str, ...], str]) -> str:
    if field.kind == "list":
        return f"tuple[{_single(field, field.of, names)}, ...]"
    return _single(field, field.kind, names)


def _single(field: Field, kind: str, names: dict[tuple[str, ...], str]) -> str:
    if kind == "reference":
        return names[field.to, "*"]
    if kind == "choice" and field.values:
        return f"Literal[{', '.join(map(repr, field.values))}]".replace("'", '"')
    return TYPES.get(kind, "str")
