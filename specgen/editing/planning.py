"""Where in a file each value goes: into an empty place, or as a new key of a section that is there."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from specgen.editing.edit import Addition, Conflict
from specgen.editing.outline import Spot
from specgen.editing.values import find_entry, is_same, read_typed
from specgen.model.field import Field, Node, Path, Schema, dotted_path
from specgen.model.problem import Refused, refuse
from specgen.model.suggest import suggest
from specgen.reading.positions import Text
from specgen.reading.unknown import TBD, is_unknown


@dataclass(slots=True)
class Section:
    """A section to be made, with the comment over it and what stands in it by name."""

    comment: str = ""
    keys: dict[str, "Section | Addition"] = field(default_factory=dict)


@dataclass(slots=True)
class Fill:
    """An empty place of a value: its key, where it stands, whether in braces, and what goes there."""

    key: Spot
    spot: Spot
    flow: bool
    field: Field
    addition: Addition


@dataclass(slots=True)
class Growth:
    """A section that gets new keys: where it stands and below which key, and its node of the schema.

    `flow` is whether what it stands in is written in braces, `outer` the outermost braces it stands in, or the
    collection whose members are each written in braces; its path and column follow.
    """

    spot: Spot
    node: Node
    path: Path
    key: Spot | None = None
    flow: bool = False
    outer: "Outer | None" = None
    new: Section = field(default_factory=Section)


@dataclass(frozen=True, slots=True)
class Outer:
    """What stands in braces on the lines of a file: a section, or a collection of members, with its path."""

    spot: Spot
    path: Path
    column: int


@dataclass(slots=True)
class Note:
    """Keys without a value that belong into braces, where a comment behind them tells of them."""

    outer: Outer
    additions: list[Addition] = field(default_factory=list)


@dataclass(slots=True)
class Plan:
    """All that is to be written into one file, and what is not."""

    fills: list[Fill] = field(default_factory=list)
    growths: dict[int, Growth] = field(default_factory=dict)
    notes: dict[int, Note] = field(default_factory=dict)
    conflicts: list[Conflict] = field(default_factory=list)
    taken: dict[Path, Addition] = field(default_factory=dict)


def plan_edit(
    text: Text, outline: Spot, schema: Schema, additions: Iterable[Addition], heads: Mapping[Path, str]
) -> Plan:
    """The plan for these additions, with comments over new sections by their paths; Refused for a path of no field."""
    planner = _Planner(text, outline, schema, heads)
    for addition in additions:
        planner.add(addition)
    return planner.plan


class _Planner:
    def __init__(self, text: Text, outline: Spot, schema: Schema, heads: Mapping[Path, str]) -> None:
        self.text, self.outline, self.schema, self.heads = text, outline, schema, heads
        self.plan = Plan()

    def add(self, addition: Addition) -> None:
        asked = find_entry(self.schema, addition.path)
        if asked is None:
            raise _refuse_unknown(addition.path, self.schema)
        given, offered = value_at(self.text.data, addition.path), read_typed(asked, addition.text)
        twin = self.plan.taken.get(addition.path)
        standing = given is not None and (given is not TBD or offered is TBD)
        if standing and (offered is TBD or is_same(asked, given, offered)):
            return
        if standing and not addition.replaces:
            self.refuse(addition, _say(given), "", addition.path)
        elif twin is not None:
            if not is_same(asked, read_typed(asked, twin.text), offered):
                self.plan.conflicts.append(Conflict(addition.path, 0, twin.text, addition.text))
        elif self.place(addition, asked):
            self.plan.taken[addition.path] = addition

    def refuse(self, addition: Addition, given: str, reason: str, path: Path) -> bool:
        line = self.text.places[path].line if path in self.text.places else 0
        self.plan.conflicts.append(Conflict(addition.path, line, given, addition.text, reason))
        return False

    def place(self, addition: Addition, asked: Field) -> bool:
        """Find the place of an addition, and say whether it becomes a value of the file."""
        path, growth = addition.path, Growth(self.outline, self.schema.root, ())
        for depth, name in enumerate(path):
            if growth.spot.flow and growth.outer is None:
                growth.outer = Outer(growth.spot, growth.path, 0)
            fault = _find_fault(growth.spot)
            if fault:
                return bool(addition.text) and self.refuse(addition, "", fault, growth.path)
            pair = growth.spot.child(name)
            if pair is None:
                return self.grow(growth, addition, depth)
            if depth == len(path) - 1:
                self.plan.fills.append(Fill(*pair, growth.spot.flow, asked, addition))
                return True
            growth = _step(growth, name, pair)
        return False

    def grow(self, growth: Growth, addition: Addition, depth: int) -> bool:
        """Note the new keys of an addition from this depth of its path on, below a section that is there."""
        here = addition.path[: depth + 1]
        if len(here) < len(addition.path) and isinstance(value_at(self.text.data, here), (dict, list)):
            reason = f"{dotted_path(here)} comes with a merge key; write the section out to give it values of its own"
            return self.refuse(addition, "", reason, here)
        if not addition.text and growth.outer is not None:
            self.plan.notes.setdefault(id(growth.outer.spot), Note(growth.outer)).additions.append(addition)
            return False
        if not addition.text and growth.spot.merged():
            return False  # an empty key of its own would hide what is given above later
        growth = self.plan.growths.setdefault(id(growth.spot), growth)
        self.make_keys(growth.new, addition, depth)
        return True

    def make_keys(self, section: Section, addition: Addition, depth: int) -> None:
        for place, name in enumerate(addition.path[depth:-1], depth + 1):
            below = section.keys.setdefault(name, Section(self.heads.get(addition.path[:place], "")))
            assert isinstance(below, Section)
            section = below
        section.keys[addition.path[-1]] = addition


def _step(growth: Growth, name: str, pair: tuple[Spot, Spot]) -> Growth:
    """The section below another one."""
    key, spot = pair
    node = growth.node.below(name)
    assert node is not None
    path, outer = (*growth.path, name), growth.outer
    if outer is None and (spot.flow or growth.spot.flow):
        member = growth.node.star is not None
        outer = Outer(growth.spot, growth.path, growth.spot.column) if member else Outer(spot, path, key.column)
    return Growth(spot, node, path, key, growth.spot.flow, outer)


def _refuse_unknown(path: Path, schema: Schema) -> Refused:
    """The refusal of a path that is no field, with the nearest one; marks stand where they are."""
    alike = [known for known in schema.fields if len(known) == len(path)]
    named = [tuple(path[at] if name == "*" else name for at, name in enumerate(known)) for known in alike]
    return refuse(f"there is no field {dotted_path(path)!r}", suggest(dotted_path(path), map(dotted_path, named)))


def _find_fault(spot: Spot) -> str:
    """Why nothing can be added to what stands here; empty if something can."""
    if spot.kind == "alias":
        return f"this section repeats *{spot.text}; write it out to give it values of its own"
    if spot.kind == "text" and (spot.style or not is_unknown(spot.text)):
        return "a section is wanted here"
    return ""


def value_at(data: Any, path: Path) -> Any:
    """The value at a path of data as read; None where nothing stands."""
    for name in path:
        if isinstance(data, list) and name.isdecimal() and int(name) < len(data):
            data = data[int(name)]
        elif isinstance(data, dict) and name in data:
            data = data[name]
        else:
            return None
    return data


def _say(value: Any) -> str:
    """A value as it is given, in one line."""
    if isinstance(value, list):
        return f"[{', '.join(map(_say, value))}]"
    return value if isinstance(value, str) else "a section"
