"""The names a clause may use: the noun of its subject, and the sections of the project."""

from dataclasses import dataclass
from typing import Any, Protocol

from specgen.model.field import Collection, Field, Node, Path, Schema
from specgen.model.project import View
from specgen.model.suggest import near_hint


class RuleError(Exception):
    """A rule file is malformed; says which clause, what is wrong and what would be right."""


class Sighted(Protocol):
    """Something that has a subject and the whole project in view."""

    @property
    def subject(self) -> View:
        """The member that is judged."""

    @property
    def project(self) -> View:
        """The whole description."""


@dataclass(frozen=True, slots=True)
class Operand:
    """A field named in a clause: read from the subject or from the project, through references.

    `pattern` is its path with stars for the marks on the way; `field` is None for a section or a collection.
    """

    text: str
    of_subject: bool
    names: Path
    pattern: Path
    field: Field | None

    def value(self, frame: Sighted) -> Any:
        """The value of the field; raises Absent."""
        found: Any = frame.subject if self.of_subject else frame.project
        for name in self.names:
            found = found[name]
        return found


def noun_of(collection: Collection) -> str:
    """What a member of a collection is called in a clause: `wall`, `mesh_layer`."""
    return collection.one.replace(" ", "_")


def collections_by_noun(schema: Schema) -> dict[str, Path]:
    """The path of each collection by the noun of its members, where no section has that name."""
    nouns = {noun_of(collection): path[:-1] for path, collection in schema.collections.items()}
    return {noun: path for noun, path in nouns.items() if noun not in schema.root.children}


@dataclass(frozen=True, slots=True)
class Scope:
    """The schema as a clause sees it: `each` is the path of the collection it is asked for."""

    schema: Schema
    each: Path

    @property
    def noun(self) -> str:
        """What a member is called in a condition: `wall`, `mesh_layer`; empty for the project itself."""
        return noun_of(self.schema.collections[(*self.each, "*")]) if self.each else ""

    def operand(self, text: str) -> Operand:
        """The field a text names; raises RuleError with the nearest name."""
        path = tuple(text.split("."))
        of_subject = path[0] == self.noun
        start: Path = (*self.each, "*") if of_subject else ()
        names = path[1:] if of_subject else path
        pattern, node = self._followed(start, names, text)
        return Operand(text, of_subject, names, pattern, node.field)

    def pattern(self, text: str) -> Path:
        """The path with stars that a text names."""
        return self.operand(text).pattern

    def _followed(self, at: Path, names: Path, text: str) -> tuple[Path, Node]:
        """The path and the place in the schema that names lead to, through references."""
        node = self.schema.node(at)
        for name in names:
            if node.field is not None and node.field.kind == "reference":
                at = (node.field.to, "*")
                node = self.schema.node(at)
            if name == "*" and node.star is not None:
                at, node = (*at, name), node.star
                continue
            known = [*node.children, *([self.noun] if not at else [])]
            if name not in node.children:
                raise RuleError(f"{text}: {name!r} is not known here: {near_hint(name, known)}")
            at, node = (*at, name), node.children[name]
        return at, node
