"""Views of an entry of the site record: one that reads it at once, and one that notes what is read of it."""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, TypeVar

from specgen.model.field import Path
from specgen.model.project import Project, View
from specgen.model.record import Entry

Answer = TypeVar("Answer")
# What is asked about an entry as a whole: a function of the project and the entry, whose answer can be looked up.
Fact = Callable[[Project, Entry], Any]
# What a value is that may name a member of another collection: a mark, or a list of them.
_MAY_NAME = (str, tuple)


@dataclass(frozen=True)
class FieldFact:
    """A question that some fields of an entry answer: who asks it has read these.

    `prepare` is done once with each value that occurs; `answer` takes what comes of it, None for a field left blank.
    """

    fields: tuple[str, ...]
    prepare: Callable[[Any], Any]
    answer: Callable[..., Any]

    def __call__(self, project: Project, entry: Entry) -> Any:  # noqa: ARG002  (as a Fact)
        """The answer for one entry."""
        values = map(entry.values.get, self.fields)
        return self.answer(*(None if value is None else self.prepare(value) for value in values))


@dataclass(frozen=True)
class GivenFact:
    """A question that the names of the fields given in an entry answer, whatever their values: they are few lists."""

    answer: Callable[[Collection[str]], Any]

    def __call__(self, project: Project, entry: Entry) -> Any:  # noqa: ARG002  (as a Fact)
        """The answer for one entry."""
        return self.answer(entry.values.keys())


@dataclass(frozen=True)
class FoundFact:
    """A question whose answers are found for all entries of a collection together, by number; None for the others."""

    find_all: Callable[[Project], Mapping[int, Any]]

    def __call__(self, project: Project, entry: Entry) -> Any:
        """The answer for one entry."""
        return self.find_all(project).get(entry.number)


def name_fields(column: str | Fact) -> tuple[str, ...]:
    """The fields of an entry that are read with a field, or with a fact."""
    if isinstance(column, str):
        return (column,)
    return column.fields if isinstance(column, FieldFact) else ()


def which(project: Project, entry: Entry) -> int:  # noqa: ARG001  (as a Fact)
    """Which entry it is: no two give the same answer."""
    return entry.number


def ask_fact(subject: View, fact: Callable[[Project, Entry], Answer]) -> Answer:
    """The answer of a question about the entry of a view, from that entry and from the project alone.

    Entries with the same answer, and the same in all fields that a clause reads, come to the same end. `fact` is a
    function of a module, so that it is asked once of each entry for all clauses that ask it.
    """
    if isinstance(subject, WatchedEntry):
        subject.read[fact] = None
    entry = subject.entry if isinstance(subject, EntryView) else subject.project.records.find(subject.path)
    assert entry is not None
    return fact(subject.project, entry)


class EntryView(View):
    """The view of one entry: what the project's own view of its path gives, without the way there."""

    __slots__ = ("entry",)

    def __init__(self, project: Project, entry: Entry) -> None:
        # The path is made where it is asked for: of a long record that is seldom.
        node = project.schema.root.children[entry.collection].star
        assert node is not None
        self.project, self.node, self.entry = project, node, entry

    @property
    def path(self) -> Path:  # type: ignore[override]
        """Its path in the project."""
        return self.entry.path

    def __getitem__(self, name: str) -> Any:
        """The value of a field; raises Absent where it was left blank."""
        value = self.entry.values.get(name)
        if value is not None and value.__class__ not in _MAY_NAME:
            return value
        child = self.node.children.get(name)
        if child is None or child.field is None:
            raise AttributeError(f"{self.entry.collection} has no field {name!r}")
        if value is None:
            return self.project.value_of(child.field, (*self.entry.path, name))
        return self.project.link(child.field, value)

    if not TYPE_CHECKING:
        __getattr__ = __getitem__

    def get(self, name: str) -> Any:
        """The value of a field below this view by dotted name, or None if it is absent."""
        return self.project.get(self.entry.path + tuple(name.split(".")))


class WatchedEntry(EntryView):
    """The view of an entry that notes which of its fields are read and which facts are asked of it, in their order.

    Whoever asks for its path asks which entry it is: then another with the same values may come to another end.
    """

    __slots__ = ("read",)

    def __init__(self, project: Project, entry: Entry) -> None:
        super().__init__(project, entry)
        self.read: dict[str | Fact, None] = {}

    def __getitem__(self, name: str) -> Any:
        """As of any entry."""
        self.read[name] = None
        return super().__getitem__(name)

    if not TYPE_CHECKING:
        __getattr__ = __getitem__

    def get(self, name: str) -> Any:
        """As of any entry."""
        self.read[name.partition(".")[0]] = None
        return super().get(name)

    @property
    def path(self) -> Path:  # type: ignore[override]
        """Its path in the project."""
        self.read[which] = None
        return self.entry.path
