"""Fields and collections of the project description, and the schema they form."""

import dataclasses
from dataclasses import dataclass
from typing import NamedTuple

Path = tuple[str, ...]


def dotted_path(path: Path) -> str:
    """`walls.W1.attachment.method`."""
    return ".".join(path)


def matches(pattern: Path, path: Path) -> bool:
    """Whether a path stands at or above a pattern, a star for any mark."""
    return all(star in (name, "*") or name == "*" for star, name in zip(pattern, path, strict=False))


def dotted_field(path: Path, name: str) -> str:
    """The dotted path of a field of a member, as the origin of an input; empty without a member."""
    return dotted_path((*path, name)) if path else ""


def bind_path(need: str | Path, subject: Path) -> Path:
    """A path with its stars replaced by the marks of the subject, as far as the two paths agree."""
    path = tuple(need.split(".")) if isinstance(need, str) else need
    bound_path: Path = ()
    for depth, name in enumerate(path):
        same = name == "*" and depth < len(subject) and bound_path == subject[:depth]
        bound_path += (subject[depth] if same else name,)
    return bound_path


class TradeWord(NamedTuple):
    """A word of the trade, the choices it may mean, and whether it is taken for its only one without asking back."""

    word: str
    choices: tuple[str, ...]
    certain: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One field, as its entry in the schema describes it."""

    path: Path  # with stars for marks
    label: str  # its name in words
    kind: str  # of value: quantity, choice, list, reference and so on
    asks: str = ""  # the question to who owes it, with the form of its answer, where the label by itself asks none
    ring: str = "optional"  # when it is owed: verdict, mockup, work, closeout or optional
    owed_by: str = ""  # the party that must give it
    why: str = ""  # the reason it is asked for
    example: str = ""  # a valid value, as written in a file
    condition: str = ""  # when it applies; empty for always
    home: str = "project"  # the file it belongs in
    of: str = ""  # kind of the entries of a list
    to: str = ""  # the collection a reference points to
    values: tuple[str, ...] = ()  # the choices
    means: tuple[TradeWord, ...] = ()  # what people write in place of a choice
    dimension: str = ""  # of a quantity, if its unit does not say it
    unit_ip: str = ""  # inch-pound unit it is printed in
    unit_si: str = ""  # metric unit it is printed in
    least: str = ""  # lower bound, as text
    most: str = ""  # upper bound, as text
    not_below: tuple[str, ...] = ()  # the fields beside it that its value never lies below
    if_none: str = ""  # what an empty list says, where it says something
    default: str = ""  # the value if none is given, as text
    default_if: str = ""  # the condition on which the default holds; empty for always
    derived: str = ""  # how it follows from other fields, in words
    optional: bool = False  # whether it is empty rather than absent if not given
    lines: bool = False  # whether a text may have several lines


@dataclass(frozen=True, slots=True, kw_only=True)
class Collection:
    """A mapping keyed by marks, or a list of items; `one` is the noun for a member."""

    path: Path  # ends in a star
    label: str  # its name in words
    one: str  # the noun for a member
    kind: str = "mapping"  # mapping or items
    if_none: str = ""  # what it says where there are none, where that says something
    optional: bool = False  # whether it is empty rather than absent if not given
    keys: tuple[str, ...] = ()  # the marks allowed; empty for any


@dataclass(slots=True)
class Node:
    """A place in the tree of the schema: a section, a collection (with `star`) or a field."""

    path: Path
    field: Field | None = None
    collection: Collection | None = None
    star: "Node | None" = None
    children: dict[str, "Node"] = dataclasses.field(default_factory=dict)

    def below(self, name: str) -> "Node | None":
        """The node of a name, mark or star below this one; of a mark that has its own entry in the schema that one."""
        return self.children.get(name) or self.star


class UnknownName(ValueError):
    """A path has an unknown name; `known` are the names at that place."""

    def __init__(self, path: str, name: str, known: tuple[str, ...]) -> None:
        super().__init__(f"{path}: {name!r} is not known here")
        self.name, self.known = name, known


@dataclass(frozen=True)
class Schema:
    """All fields and collections in the order of the catalogue, and the tree they form."""

    fields: dict[Path, Field]
    collections: dict[Path, Collection]
    root: Node

    def node(self, path: Path) -> Node:
        """The node at a path with marks or stars; KeyError if the path is unknown."""
        node = self.root
        for name in path:
            child = node.below(name)
            if child is None:
                raise KeyError(name)
            node = child
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
                raise UnknownName(dotted_path(names), name, tuple(node.children))
            at, node = (*at, name), child
        return at

    def field_at(self, path: Path) -> Field | None:
        """The field at a path, or None for a section, a collection or an unknown path."""
        try:
            return self.node(path).field
        except KeyError:
            return None
