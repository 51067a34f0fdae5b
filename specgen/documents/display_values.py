"""What a template sees: the project's values, each printed with both units and the source it comes from."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from specgen.model.absence import Absent
from specgen.model.field import Field, Node, Path
from specgen.model.project import Project, View
from specgen.model.source import Kind, Source
from specgen.model.standard import Standards
from specgen.model.value_text import value_text
from specgen.quantities.quantity import Quantity
from specgen.resolving.limits_in_force import limit_in_force, plan_source

# Sources of the project's own words are not marked: a figure without a mark is the project's own.
_UNMARKED = {Kind.PROJECT}
_UNIT_WORDS = {"%": "%", "deg": "°", "d": " days", "year": " years", "month": " months"}


@dataclass(frozen=True, slots=True)
class Shown:
    """A value as a document prints it; it compares and counts as the value itself.

    `open` is a value still to be given: it prints its label in brackets and is equal to nothing.
    """

    text: str
    raw: Any = None
    source: Source | None = None
    open: bool = False
    about: str = ""

    def __str__(self) -> str:
        return self.text

    def __bool__(self) -> bool:
        return not self.open and bool(self.raw)

    def __eq__(self, other: object) -> bool:
        return not self.open and self.raw == (other.raw if isinstance(other, Shown) else other)

    def __hash__(self) -> int:
        return hash(self.text)

    def __contains__(self, word: object) -> bool:
        return not self.open and word in self.raw

    def __iter__(self) -> Iterator[Any]:
        return iter(() if self.open or not isinstance(self.raw, tuple) else self.raw)


@dataclass(frozen=True)
class Sight:
    """The facts a page is printed from: the project, the trade's rows, the unit system printed first."""

    project: Project
    standards: Standards

    @property
    def first(self) -> str:
        """`ip` or `si`."""
        return self.project.system

    def shown(self, path: Path) -> Shown:
        """The value at a path as it prints."""
        field = self.project.schema.node(path).field
        assert field is not None
        try:
            value = self.project.value(path)
        except Absent:
            return Shown(f"[{field.label}]", open=True)
        source = plan_source(self.project, path, field, self.standards)
        counts = isinstance(value, (Quantity, int, Fraction, float)) and not isinstance(value, bool)
        marked = counts and source.kind not in _UNMARKED
        return Shown(self.text(value, field), _raw(value), source if marked else None, about=field.label)

    def text(self, value: Any, field: Field | None) -> str:
        """The value in words, with the unit of its field."""
        text = value_text(value, field, self.first)
        if field is None or isinstance(value, Quantity) or not isinstance(value, (int, Fraction, float)):
            return text
        return (
            with_unit(text, "%" if field.kind == "percent" else field.unit_ip) if not isinstance(value, bool) else text
        )

    def waiting(self, absent: Absent) -> tuple[Shown, str]:
        """An open value, and which field it waits for."""
        field = self.project.schema.field_at(absent.path)
        return Shown("[open]", open=True), f"waits for: {field.label if field else absent.path[-1]}"

    def limit(self, name: str) -> Shown:
        """The figure in force of a row of the limits, with its source."""
        limit = self.standards.limits[name]
        value, source = limit_in_force(self.project, limit)
        field = self.project.schema.field_at(limit.bounds) if limit.bounds else None
        text = value_text(value, field, self.first)
        about = limit.about[:1].upper() + limit.about[1:]
        return Shown(with_unit(text, limit.unit), value, source if source.kind not in _UNMARKED else None, about=about)


def with_unit(text: str, unit: str) -> str:
    """`24 h`, `8%`, `20°`; no unit leaves the text as it is."""
    return text + (_UNIT_WORDS.get(unit) or (f" {unit}" if unit else ""))


def _raw(value: Any) -> Any:
    """A value as a template compares it: yes and no as words, members by their mark."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, View):
        return value.mark
    if isinstance(value, tuple):
        return tuple(_raw(entry) for entry in value)
    return value


class Page:
    """A section or member as a template sees it: `wall.insulation.thickness` prints itself."""

    def __init__(self, sight: Sight, node: Node, path: Path) -> None:
        self._sight, self._node, self._path = sight, node, path

    @property
    def mark(self) -> str:
        """The key on the drawings."""
        return self._path[-1] if self._path else ""

    def __getattr__(self, name: str) -> Any:
        node = self._node.children.get(name)
        if node is None:
            raise AttributeError(f"there is no field {'.'.join((*self._path, name))}")
        path = self._path + (name,)
        if node.field is None:
            return Pages(self._sight, node, path) if node.star is not None else Page(self._sight, node, path)
        if node.field.kind == "reference":
            linked = self._sight.project.get(path)
            if linked is not None:
                return Page(self._sight, linked.node, linked.path)
        return self._sight.shown(path)

    def __str__(self) -> str:
        return self.mark

    @property
    def open(self) -> bool:
        """Whether nothing at all is given below this section."""
        depth = len(self._path)
        return not any(path[:depth] == self._path for path in self._sight.project.values)


class Pages:
    """A collection as a template sees it; an absent one is empty."""

    def __init__(self, sight: Sight, node: Node, path: Path) -> None:
        self._sight, self._node, self._path = sight, node, path

    def __iter__(self) -> Iterator[Any]:
        star = self._node.star
        assert star is not None
        for mark in self._sight.project.members.get(self._path, ()):
            path = self._path + (mark,)
            yield self._sight.shown(path) if star.field is not None else Page(self._sight, star, path)

    def __len__(self) -> int:
        return len(self._sight.project.members.get(self._path, ()))

    def __getitem__(self, mark: str) -> Any:
        star = self._node.star
        assert star is not None
        return Page(self._sight, star, self._path + (str(mark),))

    @property
    def open(self) -> bool:
        """Whether the collection is absent."""
        return self._path not in self._sight.project.members
