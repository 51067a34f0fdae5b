"""Providers of computed values, and the resolver that computes each value once."""

import dataclasses
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, NamedTuple

from specgen.model.absence import Absent
from specgen.model.capacity import Check
from specgen.model.field import Field, Path, UnknownName, bind_path, dotted_path
from specgen.model.problem import refuse
from specgen.model.project import Project
from specgen.model.suggest import suggest
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import SAME_UNITS, UNITS

# Asks for another value by its name: that of the same member, or of the one on a path.
Ask = Callable[..., Any]

# The groups a document of calculations is divided into, in its order; each is a folder of calculations.
GROUPS = {
    "heat": "Heat",
    "joints": "Movement joints",
    "board": "Board",
    "coats": "Coats",
    "air": "Air",
    "wind": "Wind",
    "site": "Site",
    "moisture": "Moisture",
    "time": "Time",
    "color": "Color",
    "code": "Code",
}


class Argument(NamedTuple):
    """An argument of `calc NAME key=value`."""

    name: str  # the key
    dimension: str  # that of a quantity; number, percent, yes_no or word for any other value
    about: str  # what it is, in words
    default: str | None = None  # text; empty if the key may be left out, None if it is required
    choices: tuple[str, ...] = ()  # the words allowed, if limited
    read: Callable[[str], Any] | None = None  # converts a text of its own form, or raises QuantityError
    bare: str = ""  # the unit of a bare number, if name or unit make it clear
    default_si: str = ""  # the default of a sum in SI; empty for the same
    span: tuple[Any, Any] | str = ""  # the least and the most it may be, as values or texts, or the field of that range
    also: tuple[str, ...] = ()  # other names it is known by: that of its field

    @property
    def field(self) -> Field:
        """The field that describes the argument, so that its text is converted like that of any other field."""
        path, kind = (self.name,), _KINDS.get(self.dimension, "quantity")
        if kind == "quantity":
            # A temperature difference is written in plain degrees.
            dimension = SAME_UNITS.get(self.dimension, self.dimension).removesuffix("_difference")
            units = [name for name, unit in UNITS.items() if unit.dimension == dimension]
            return Field(
                path=path, label=self.name, kind=kind, dimension=self.dimension, unit_ip=units[0], unit_si=units[:2][-1]
            )
        return Field(path=path, label=self.name, kind="choice" if self.choices else kind, values=self.choices)


# Field kinds of arguments that are no quantity.
_KINDS = {"number": "number", "percent": "percent", "yes_no": "yes_no", "word": "text"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Provider:
    """A value computed once for each of its members, and how to compute it."""

    name: str  # as in `calc NAME`
    title: str  # as documents print it
    each: Path  # the path of the collection of its members; empty for the project itself
    # gets the view of a member and asks for other values by name; None if the figures come from keys only
    compute: Callable[[Any, Ask], Any] | None
    needs: tuple[str, ...] = ()  # names of other computed values it asks for
    # fields it reads, dotted, stars for the members on the way; they may lead through references
    reads: tuple[str, ...] = ()
    direct: Callable[..., Any] | None = None  # the same calculation from keyword arguments, for the command line
    make_keys: Callable[[], tuple[Argument, ...]] = tuple  # of the command line; a project never asks for them
    # sections of the project in place of members, such as primer; then `reads` begin with a star
    sections: tuple[str, ...] = ()
    example: str = ""  # keys and values that the command line may be given, as they are typed
    group: str = ""  # its folder, one of GROUPS
    order: int = 100  # its place in the group
    printed: bool = True  # whether documents print it without being asked
    checks: tuple[Check, ...] = ()  # what its result is held against, the governing one first
    # Symbols of the steps that a table of the members shows in place of a working in full; empty for one in full.
    columns: tuple[str, ...] = ()
    beside: tuple[str, ...] = ()  # names of other values of the member that answers show beside it
    buy: str = ""  # the symbol of the step that says what is bought
    # How a value of it is read in the work, where halves up would fall short of it: rounded to the gauge.
    as_read: Callable[[float, str], Quantity] | None = None
    upper: str = ""  # the symbol of the step at the upper end of a range, where the result is its lower one
    adds: bool = False  # whether the results of its members add up to one that is wanted
    layered: bool = False  # whether its steps are numbered by the layers of a wall, and stand in a table of them

    @property
    def keys(self) -> tuple[Argument, ...]:
        """The keys of the command line."""
        return self.make_keys()

    def of_project(self) -> Callable[[Any, Ask], Any]:
        """The function that computes a member's value; raises Refused for a calculation that works from keys only."""
        if self.compute is None:
            hint = f"specgen calc {self.name} key=value ..."
            raise refuse(f"{self.name} takes its figures from keys, not from a project", hint)
        return self.compute

    def patterns(self) -> list[Path]:
        """The fields it takes, each section by its name."""
        paths = [tuple(read.split(".")) for read in self.reads]
        return [(section, *path[1:]) for section in self.sections for path in paths if path[0] == "*"] + [
            path for path in paths if path[0] != "*"
        ]

    def members(self, project: Project) -> list[Path]:
        """The members of a project that have this value, in the order of its file."""
        if self.sections:
            return [(section,) for section in self.sections]
        return [(*self.each, mark) for mark in project.members.get(self.each, ())] if self.each else [()]


class CycleError(Exception):
    """Two computed values need each other."""


@dataclass
class Resolver:
    """Computes values by name, each once, on demand; raises Absent if a field is missing.

    `names` are the names of all values, for a document that prints them all.
    """

    project: Project
    find: Callable[[str], Provider]
    names: tuple[str, ...] = ()
    _known: dict[tuple[Path, str], Any] = dataclasses.field(default_factory=dict)
    _running: list[tuple[Path, str]] = dataclasses.field(default_factory=list)
    _known_fields: set[str] = dataclasses.field(default_factory=set)

    def __call__(self, path: Path, name: str) -> Any:
        """The value `name` for the member on a path; KeyError for an unknown name."""
        provider = self._find_checked(name)
        compute = provider.of_project()
        key = (self._member(path, provider), name)
        if key in self._running:
            raise CycleError(" -> ".join(f"{dotted_path(p)} {n}" for p, n in [*self._running, key]))
        if key not in self._known:
            self._running.append(key)
            try:
                self._known[key] = compute(self.project.view(key[0]), lambda n, path=key[0]: self(path, n))
            finally:
                self._running.pop()
        return self._known[key]

    def _find_checked(self, name: str) -> Provider:
        """The provider `name`, its fields checked against the schema; raises Refused with the nearest known field."""
        provider = self.find(name)
        if provider.name not in self._known_fields:
            for path in provider.patterns():
                try:
                    self.project.schema.follow(path)
                except UnknownName as unknown:
                    raise refuse(f"{name} reads {unknown}", suggest(unknown.name, unknown.known)) from None
            self._known_fields.add(provider.name)
        return provider

    def missing(self, path: Path, name: str) -> list[Path]:
        """The absent fields that `name` reads at the member on a path."""
        provider = self._find_checked(name)
        try:
            member = self._member(path, provider)
        except Absent as absent:
            return [absent.path]
        reads = [self._to_link(bind_path(read, member)) for read in provider.reads]
        return [path for path in dict.fromkeys(reads) if self._absent(path)] + [
            p for need in provider.needs for p in self.missing(member, need)
        ]

    def members(self, provider: Provider) -> list[Path]:
        """The members a provider computes a value for; raises Absent if their collection is missing."""
        if provider.each and not provider.sections:
            self.project.marks(provider.each)
        return provider.members(self.project)

    def member(self, path: Path, name: str) -> Path:
        """The member on a path that the value `name` belongs to; raises Absent if a reference is missing."""
        return self._member(path, self.find(name))

    def _to_link(self, path: Path) -> Path:
        """The path up to its first reference: until that is given, nothing beyond it can be asked for."""
        ends = range(1, len(path))
        return next((path[:end] for end in ends if self.project.schema.node(path[:end]).field is not None), path)

    def _absent(self, path: Path) -> bool:
        return "*" not in path and self.project.get_or_members(path) is None

    def _member(self, path: Path, provider: Provider) -> Path:
        """The member the value belongs to: the path's own, or its wall or elevation."""
        if path[:1] and path[0] in provider.sections:
            return path[:1]
        if provider.sections:
            raise KeyError(f"{dotted_path(path)} is none of {', '.join(provider.sections)}")
        if not provider.each:
            return ()
        if path[:1] == provider.each:
            return path[:2]
        for link in ("elevation", "wall"):
            node = self.project.schema.node(path).children.get(link)
            if node is not None and node.field is not None:
                return self._member(self.project.value(path + (link,)).path, provider)
        raise KeyError(f"{dotted_path(path)} leads to no member of {dotted_path(provider.each)}")
