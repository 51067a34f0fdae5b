"""A field of the project description, as one entry of the schema says it."""

import dataclasses
from dataclasses import dataclass

Path = tuple[str, ...]


def dotted(path: Path) -> str:
    """`walls.W1.attachment.method`."""
    return ".".join(path)


def below(path: Path, name: str) -> str:
    """The dotted path of a field of a member, as the origin of an input tells it; empty for no member."""
    return dotted((*path, name)) if path else ""


def bound(need: str | Path, subject: Path) -> Path:
    """A path whose stars are the marks of the subject, as far as they lead the same way."""
    path = tuple(need.split(".")) if isinstance(need, str) else need
    made: Path = ()
    for depth, name in enumerate(path):
        same = name == "*" and depth < len(subject) and made == subject[:depth]
        made += (subject[depth] if same else name,)
    return made


@dataclass(frozen=True, slots=True)
class Field:
    """One field: what it is called, what may stand there, who owes it and when."""

    path: Path
    label: str
    kind: str
    ring: str = "optional"
    owed_by: str = ""
    why: str = ""
    example: str = ""
    condition: str = ""
    home: str = "project"
    of: str = ""
    to: str = ""
    values: tuple[str, ...] = ()
    dimension: str = ""
    unit_ip: str = ""
    unit_si: str = ""
    least: str = ""
    most: str = ""
    default: str = ""
    default_if: str = ""
    derived: str = ""
    optional: bool = False


@dataclass(frozen=True, slots=True)
class Collection:
    """A mapping keyed by marks, or a list of items; `one` is the noun for a member."""

    path: Path
    label: str
    one: str
    kind: str = "mapping"
    optional: bool = False
    keys: tuple[str, ...] = ()


@dataclass(slots=True)
class Node:
    """A place in the tree of the schema: a section, a collection (with `star`) or a field."""

    path: Path
    field: Field | None = None
    collection: Collection | None = None
    star: "Node | None" = None
    children: dict[str, "Node"] = dataclasses.field(default_factory=dict)


class UnknownName(ValueError):
    """A path goes on with a name that stands not there; `known` are those that do."""

    def __init__(self, path: str, name: str, known: tuple[str, ...]) -> None:
        super().__init__(f"{path}: {name!r} is not known here")
        self.name, self.known = name, known


@dataclass(frozen=True)
class Schema:
    """Every field and collection once, in the order of the catalogue, and the tree they form."""

    fields: dict[Path, Field]
    collections: dict[Path, Collection]
    root: Node

    def node(self, path: Path) -> Node:
        """The node a path with marks or stars leads to; KeyError where the path is unknown."""
        node = self.root
        for name in path:
            node = node.star if node.star is not None else node.children[name]
        return node

    def follow(self, names: Path, start: Path = ()) -> Path:
        """The path that names lead to from `start`, through references, stars for marks; raises UnknownName."""
        at, node = start, self.node(start)
        for name in names:
            if node.field is not None and node.field.kind == "reference":
                at = (node.field.to, "*")
                node = self.node(at)
            child = node.star if name == "*" else node.children.get(name)
            if child is None:
                raise UnknownName(dotted(names), name, tuple(node.children))
            at, node = (*at, name), child
        return at

    def field_at(self, path: Path) -> Field | None:
        """The field a path leads to, or None for a section, a collection or an unknown path."""
        try:
            return self.node(path).field
        except KeyError:
            return None
