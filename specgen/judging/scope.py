"""The names a clause may use: the noun of its subject and the sections of the project."""

from typing import Any, NamedTuple, Protocol

from specgen.model.field import Collection, Field, Path, Schema, UnknownName
from specgen.model.project import View
from specgen.model.record import COLLECTIONS
from specgen.model.suggest import suggest


class ClauseError(ValueError):
    """A clause names what there is not; says what would be right."""


class HasSubject(Protocol):
    """An object with views of a subject and of the whole project."""

    @property
    def subject(self) -> View:
        """The member that is judged."""

    @property
    def project(self) -> View:
        """The whole description."""


class Operand(NamedTuple):
    """A field named in a clause: read from the subject or from the project, through references.

    `pattern` is its path with stars for the marks on the way; `field` is None for a section or a collection.
    """

    text: str
    of_subject: bool
    names: Path
    pattern: Path
    field: Field | None

    def value(self, frame: HasSubject) -> Any:
        """The value of the field; raises Absent."""
        found: Any = frame.subject if self.of_subject else frame.project
        for name in self.names:
            found = found[name]
        return found


def noun_of(collection: Collection) -> str:
    """What a member of a collection is called in a clause: `wall`, `mesh_layer`."""
    return collection.one.replace(" ", "_")


def collections_by_noun(schema: Schema) -> dict[str, Path]:
    """The path of each collection by the noun of its members, unless a section has that name.

    An entry of the site record is called as its collection is: `log.air`.
    """
    nouns = {noun_of(collection): path[:-1] for path, collection in schema.collections.items()}
    entries = {name: (name,) for name in COLLECTIONS}
    return {noun: path for noun, path in nouns.items() if noun not in schema.root.children} | entries


class Scope(NamedTuple):
    """The schema as a clause sees it: `each` is the path of the collection it is asked for."""

    schema: Schema
    each: Path

    @property
    def noun(self) -> str:
        """What a member is called in a condition: `wall`, `mesh_layer`; empty for the project itself."""
        if not self.each or self.each[0] in COLLECTIONS:
            return "".join(self.each)
        return noun_of(self.schema.collections[(*self.each, "*")])

    def operand(self, text: str) -> Operand:
        """The field a text names; raises ClauseError with the nearest name."""
        path = tuple(text.split("."))
        of_subject = path[0] == self.noun
        names = path[1:] if of_subject else path
        try:
            pattern = self.schema.follow(names, (*self.each, "*") if of_subject else ())
        except UnknownName as unknown:
            known = [*unknown.known, *([self.noun] if unknown.name == path[0] else [])]
            raise ClauseError(f"{text}: {unknown.name!r} is not known here: {suggest(unknown.name, known)}") from None
        return Operand(text, of_subject, names, pattern, self.schema.node(pattern).field)

    def pattern(self, text: str) -> Path:
        """The path with stars that a text names."""
        return self.operand(text).pattern
