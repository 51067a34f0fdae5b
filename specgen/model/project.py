"""The project: typed values by path, read through views; an absent value raises its path, nothing is guessed."""

from collections.abc import Callable, Hashable, Iterator
from dataclasses import dataclass, field
from functools import wraps
from typing import TYPE_CHECKING, Any, Generic, NamedTuple, TypeVar, TypeVarTuple, cast

from specgen.model.absence import Absent
from specgen.model.condition import Term
from specgen.model.evaluation import Look, evaluate
from specgen.model.field import Field, Node, Path, Schema, dotted_path
from specgen.model.finding import Place
from specgen.model.record import Records

Answer = TypeVar("Answer")


class InputFile(NamedTuple):
    """A file that a project was read from."""

    use: str  # the field that names it; `project` for the project file itself
    name: str  # as it is named there
    digest: str  # of its bytes


class Answered(NamedTuple):
    """What another party answered for a field, and whether that is the value of the project still."""

    answer: str  # the mark
    text: str  # as it was answered
    stands: bool


@dataclass(frozen=True)
class Project:
    """Facts of one job. `values` are the plan; `maker` are the coating manufacturer's own figures.

    `from_maker` are the paths of the plan whose value is in the coating system file only. `members` holds the marks of
    each given collection, empty ones included. `unfound` are the paths that name a file which is not there,
    `unmet` the fields left open because a side file names a mark of no member, with what is wrong; `inputs` the files
    that it was read from; `answered` what others have answered, by the path of the field. `records` are the entries
    written on site: a path reaches them as it does any member.
    """

    schema: Schema
    values: dict[Path, Any]
    members: dict[Path, tuple[str, ...]]
    places: dict[Path, Place] = field(default_factory=dict)
    maker: dict[Path, Any] = field(default_factory=dict)
    defaults: dict[Path, Any] = field(default_factory=dict)
    from_maker: frozenset[Path] = frozenset()
    unfound: frozenset[Path] = frozenset()
    unmet: dict[Path, str] = field(default_factory=dict)
    inputs: tuple[InputFile, ...] = ()
    answered: dict[Path, Answered] = field(default_factory=dict)
    records: Records = field(default_factory=Records)
    answers: dict[tuple[Term, Path, str | None], bool] = field(default_factory=dict, init=False, compare=False)
    _entries: dict[Path, Field] = field(default_factory=dict, init=False, compare=False)  # by the paths asked for
    _by_reference: dict[tuple[Path, str], dict[Any, tuple[str, ...]]] = field(
        default_factory=dict, init=False, compare=False
    )
    _remembered: dict[Any, Any] = field(default_factory=dict, init=False, compare=False)

    def root(self) -> "View":
        """The view of the whole project."""
        return View(self, self.schema.root, ())

    @property
    def system(self) -> str:
        """The unit system printed first: ip or si."""
        return str(self.get(("package", "units")) or "ip")

    @property
    def both_units(self) -> bool:
        """Whether quantities print in both unit systems."""
        return bool(self.get(("package", "both_units")))

    def is_given(self, path: Path) -> bool:
        """Whether the project, or a file it names, gives a value or members at this path."""
        return path in self.values or path in self.members or self._recorded(path) is not None

    def value(self, path: Path) -> Any:
        """The typed value at a path: given, derived or default; raises Absent."""
        entry = self._entries.get(path)
        if entry is None:
            entry = self._entries[path] = self._find_entry(path)
        return self.value_of(entry, path)

    def _find_entry(self, path: Path) -> Field:
        entry = self.schema.node(path).field
        if entry is None:
            raise KeyError(dotted_path(path))
        return entry

    def value_of(self, entry: Field, path: Path) -> Any:
        """The typed value of a field at its path, for a caller that has both; raises Absent."""
        if path in self.values:
            return self.link(entry, self.values[path])
        recorded = self._recorded(path)
        if recorded is not None:
            return self.link(entry, recorded)
        if path in self.unmet:  # what is not told there may not be taken for told by others, or for empty
            raise Absent(path)
        derived = self._derive(entry)
        if derived is not None:
            return derived
        if entry.path in self.defaults and (not entry.default_if or evaluate(entry.default_if, self, path)):
            return self.defaults[entry.path]
        if entry.optional:
            return ()
        raise Absent(path)

    def applies(self, path: Path, look: Look | None = None) -> bool:
        """Whether the condition of the field at a path holds, as far as it is known; `look` as in `evaluate`."""
        entry = self.schema.node(path).field
        return entry is None or not entry.condition or evaluate(entry.condition, self, path, look)

    def get(self, path: Path) -> Any:
        """The typed value at a path, or None if it is absent."""
        try:
            return self.value(path)
        except Absent:
            return None

    def get_or_members(self, path: Path) -> Any:
        """The value of a field or the marks of a collection, or None if absent."""
        if self.schema.node(path).field is not None:
            return self.get(path)
        return self.members.get(path)

    def marks(self, path: Path) -> tuple[str, ...]:
        """The marks of a collection; an optional one that is absent is empty; raises Absent."""
        if path in self.members:
            return self.members[path]
        collection = self.schema.node(path).collection
        if collection is not None and collection.optional:
            return ()
        raise Absent(path)

    def each(self, pattern: Path) -> list[Path]:
        """All paths that match a pattern with stars; raises Absent at the first missing collection."""
        paths: list[Path] = [()]
        for name in pattern:
            paths = [p + (m,) for p in paths for m in (self.marks(p) if name == "*" else (name,))]
        return paths

    def place(self, path: Path) -> Place:
        """The place of a path, or of its nearest given parent if it is absent itself."""
        found = None if path[:2] in self.places else self.records.find(path)
        if found is not None:
            return Place(dotted_path(path), found.place.file, found.place.line, found.place.column)
        for end in range(len(path), 0, -1):
            if path[:end] in self.places:
                near = self.places[path[:end]]
                return Place(dotted_path(path), near.file, near.line, near.column)
        return Place(dotted_path(path))

    def view(self, path: Path) -> "View":
        """The view of a section or of a member."""
        return View(self, self.schema.node(path), path)

    def find_referring(self, collection: Path, name: str, mark: str) -> tuple[str, ...]:
        """Members whose reference `name` is `mark` or missing. Raises Absent if the collection is missing.

        Members are grouped once, so that asking for each of many marks stays linear.
        """
        key = (collection, name)
        if key not in self._by_reference:
            grouped: dict[Any, list[str]] = {}
            for member in self.marks(collection):
                at = (*collection, member, name)
                grouped.setdefault(self.values.get(at, self._recorded(at)), []).append(member)
            without = tuple(grouped.pop(None, ()))
            self._by_reference[key] = {None: without} | {to: (*them, *without) for to, them in grouped.items()}
        found = self._by_reference[key]
        return found.get(mark, found[None])

    def remember(self, question: Hashable, ask: Callable[[], Answer]) -> Answer:
        """The answer of a question about the whole project, asked once however many members ask it; raises Absent."""
        if question not in self._remembered:
            try:
                self._remembered[question] = ask()
            except Absent as absent:
                self._remembered[question] = absent
        answer = self._remembered[question]
        if isinstance(answer, Absent):
            raise Absent(*answer.paths)
        return cast(Answer, answer)

    def _recorded(self, path: Path) -> Any:
        """The value of a field of an entry; None for any other path."""
        found = self.records.find(path) if len(path) == 3 else None  # collection, number, name
        return None if found is None else found.get(path[2])

    def link(self, entry: Field, value: Any) -> Any:
        """A value as it is read: a mark as the view of the member that it names."""
        if entry.kind == "reference":
            return self.view((entry.to, value))
        if entry.kind == "list" and entry.of == "reference":
            return tuple(self.view((entry.to, mark)) for mark in value)
        return value

    def _derive(self, entry: Field) -> "View | None":
        if entry.kind == "reference" and entry.derived.startswith("the only"):
            marks = self.members.get((entry.to,), ())
            if len(marks) == 1:
                return self.view((entry.to, marks[0]))
        return None


class View:
    """A read-only dotted view of one section or member: `wall.attachment.method`, `wall.mark`."""

    __slots__ = ("project", "node", "path")

    def __init__(self, project: Project, node: Node, path: Path) -> None:
        self.project, self.node, self.path = project, node, path

    @property
    def mark(self) -> str:
        """The key of this member on the drawings."""
        return self.path[-1]

    def __getitem__(self, name: str) -> Any:
        """Same as an attribute, for a field named at run time or by a Python keyword: `zone["from"]`."""
        node = self.node.children.get(name)
        if node is None:
            raise AttributeError(f"{dotted_path(self.path)} has no field {name!r}")
        path = self.path + (name,)
        if node.field is not None:
            return self.project.value_of(node.field, path)
        return Members(self.project, node, path) if node.star is not None else View(self.project, node, path)

    if not TYPE_CHECKING:  # fields and types of views are declared in the stub of the typed views
        __getattr__ = __getitem__

    def get(self, name: str) -> Any:
        """The value of a field below this view by dotted name, or None if it is absent."""
        return self.project.get(self.path + tuple(name.split(".")))

    def __eq__(self, other: object) -> bool:
        return isinstance(other, View) and other.path == self.path

    def __hash__(self) -> int:
        return hash(self.path)

    def __str__(self) -> str:
        return self.path[-1] if self.path else ""


Member = TypeVar("Member")


class Members(Generic[Member]):
    """The members of a collection in the order of the file; iterating an absent one raises Absent."""

    __slots__ = ("project", "node", "path")

    def __init__(self, project: Project, node: Node, path: Path) -> None:
        self.project, self.node, self.path = project, node, path

    def __iter__(self) -> Iterator[Member]:
        for mark in self.project.marks(self.path):
            yield self[mark]

    def __getitem__(self, mark: str) -> Member:
        star = self.node.star
        assert star is not None
        path = self.path + (mark,)
        member: Any = self.project.value(path) if star.field is not None else View(self.project, star, path)
        return cast(Member, member)

    def __len__(self) -> int:
        return len(self.project.marks(self.path))

    def find_referring(self, name: str, mark: str) -> Iterator[Member]:
        """Members whose reference `name` is `mark` or missing. Raises Absent if the collection is missing."""
        return map(self.__getitem__, self.project.find_referring(self.path, name, mark))

    def is_given(self) -> bool:
        """Whether the collection is given, even if empty."""
        return self.path in self.project.members


Whole = TypeVar("Whole", bound=View)
Words = TypeVarTuple("Words")


def asked_once(question: Callable[[Whole, *Words], Answer]) -> Callable[[Whole, *Words], Answer]:
    """A question about the whole project, so declared that it is looked into once for all members that ask it."""

    @wraps(question)
    def ask(project: Whole, *words: *Words) -> Answer:
        return project.project.remember((question, *words), lambda: question(project, *words))

    return ask
