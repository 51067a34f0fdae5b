"""What a computed value is provided by, and the one resolver that hands it out."""

import dataclasses
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from specgen.model.absence import Absent
from specgen.model.field import Field, Path, UnknownName, bound, dotted
from specgen.model.problem import refuse
from specgen.model.project import Project
from specgen.model.suggest import near_hint
from specgen.quantities.units import SAME_UNITS, UNITS

Ask = Callable[[str], Any]

# The groups a document of calculations is divided into, in its order; each is a folder of calculations.
GROUPS = {
    "heat": "Heat",
    "joints": "Movement joints",
    "board": "Board",
    "coats": "Coats",
    "air": "Air",
    "wind": "Wind",
    "moisture": "Moisture",
    "time": "Time",
    "color": "Color",
    "code": "Code",
}


@dataclass(frozen=True, slots=True)
class Key:
    """A key of `calc NAME key=value`: its dimension (`number`, `percent`, `word` for no quantity).

    `default` is text, empty for a key that may be left out and None for one that must be given; `read` makes the value
    of a text of its own form, or raises QuantityError. `bare` is the unit of a bare number, for a key whose name or
    whose one unit says it.
    """

    name: str
    dimension: str
    about: str
    default: str | None = None
    choices: tuple[str, ...] = ()
    read: Callable[[str], Any] | None = None
    bare: str = ""

    @property
    def field(self) -> Field:
        """The field that a key is, so that its text is read as the text of any other field."""
        path, kind = (self.name,), _KINDS.get(self.dimension, "quantity")
        if kind == "quantity":
            # A difference of temperatures is written in plain degrees.
            dimension = SAME_UNITS.get(self.dimension, self.dimension).removesuffix("_difference")
            units = [name for name, unit in UNITS.items() if unit.dimension == dimension]
            return Field(path, self.name, kind, dimension=self.dimension, unit_ip=units[0], unit_si=units[:2][-1])
        return Field(path, self.name, "choice" if self.choices else kind, values=self.choices)


# The kind of field of a key that holds no quantity.
_KINDS = {"number": "number", "percent": "percent", "yes_no": "yes_no", "word": "text"}


@dataclass(frozen=True, slots=True)
class Provider:
    """A value computed once for each member of `each` (the project itself where it is empty).

    `sections` names sections of the project in place of members: primer, gloss; `reads` then star the section.
    `compute` gets the view of the member and asks for other values by name; it is None for a sum that takes its
    figures from keys alone. `needs` says which values it asks for, and `reads` names the fields it takes, stars for
    the members they stand in; they may lead through references.
    `direct` is the same sum from keyword quantities, for the command line. `group` is its folder, one of GROUPS, and
    `order` the place in it. `printed` is no for a value that no document prints unless it is asked for.
    """

    name: str
    title: str
    each: Path
    compute: Callable[[Any, Ask], Any] | None
    needs: tuple[str, ...] = ()
    reads: tuple[str, ...] = ()
    direct: Callable[..., Any] | None = None
    keys: tuple[Key, ...] = ()
    sections: tuple[str, ...] = ()
    group: str = ""
    order: int = 100
    printed: bool = True

    def of_project(self) -> Callable[[Any, Ask], Any]:
        """What computes the value of a member; raises Refused for a sum that takes its figures from keys alone."""
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
        """The paths the value is computed for in a project, in the order of its file."""
        if self.sections:
            return [(section,) for section in self.sections]
        return [(*self.each, mark) for mark in project.members.get(self.each, ())] if self.each else [()]


class CycleError(Exception):
    """Two computed values wait for one another."""


@dataclass
class Resolver:
    """Hands out computed values by name; each is computed once, on demand. Raises Absent where a field is missing.

    `names` are those of all values there are, for a document that prints them all.
    """

    project: Project
    find: Callable[[str], Provider]
    names: tuple[str, ...] = ()
    _known: dict[tuple[Path, str], Any] = dataclasses.field(default_factory=dict)
    _running: list[tuple[Path, str]] = dataclasses.field(default_factory=list)
    _known_fields: set[str] = dataclasses.field(default_factory=set)

    def __call__(self, path: Path, name: str) -> Any:
        """The value `name` for the member a path leads through; KeyError for an unknown name."""
        provider = self._checked(name)
        compute = provider.of_project()
        key = (self._member(path, provider), name)
        if key in self._running:
            raise CycleError(" -> ".join(f"{dotted(p)} {n}" for p, n in [*self._running, key]))
        if key not in self._known:
            self._running.append(key)
            try:
                self._known[key] = compute(self.project.view(key[0]), lambda n: self(key[0], n))
            finally:
                self._running.pop()
        return self._known[key]

    def _checked(self, name: str) -> Provider:
        """A provider whose fields are all in the schema; raises Refused with the nearest name of one that is not."""
        provider = self.find(name)
        if provider.name not in self._known_fields:
            for path in provider.patterns():
                try:
                    self.project.schema.follow(path)
                except UnknownName as unknown:
                    raise refuse(f"{name} reads {unknown}", near_hint(unknown.name, unknown.known)) from None
            self._known_fields.add(provider.name)
        return provider

    def missing(self, path: Path, name: str) -> list[Path]:
        """The fields that `name` reads, at the member a path leads through, and that are absent."""
        provider = self._checked(name)
        try:
            member = self._member(path, provider)
        except Absent as absent:
            return [absent.path]
        reads = [self._to_link(bound(read, member)) for read in provider.reads]
        return [path for path in dict.fromkeys(reads) if self._absent(path)] + [
            p for need in provider.needs for p in self.missing(member, need)
        ]

    def members(self, provider: Provider) -> list[Path]:
        """The members a provider computes a value for; raises Absent where their collection is missing."""
        if provider.each and not provider.sections:
            self.project.marks(provider.each)
        return provider.members(self.project)

    def member(self, path: Path, name: str) -> Path:
        """The member that the value `name` of a path belongs to; raises Absent where a link to it is missing."""
        return self._member(path, self.find(name))

    def _to_link(self, path: Path) -> Path:
        """The path up to its first reference: what that leads to is asked for once it is given."""
        ends = range(1, len(path))
        return next((path[:end] for end in ends if self.project.schema.node(path[:end]).field is not None), path)

    def _absent(self, path: Path) -> bool:
        return "*" not in path and self.project.get_or_members(path) is None

    def _member(self, path: Path, provider: Provider) -> Path:
        """The member the value belongs to: the path's own, or the wall or elevation it stands on."""
        if path[:1] and path[0] in provider.sections:
            return path[:1]
        if provider.sections:
            raise KeyError(f"{dotted(path)} is none of {', '.join(provider.sections)}")
        if not provider.each:
            return ()
        if path[:1] == provider.each:
            return path[:2]
        for link in ("elevation", "wall"):
            node = self.project.schema.node(path).children.get(link)
            if node is not None and node.field is not None:
                return self._member(self.project.value(path + (link,)).path, provider)
        raise KeyError(f"{dotted(path)} leads to no member of {dotted(provider.each)}")
