"""Where in a file each value goes: into an empty place, or as a new key of a section that is there."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any

from specgen.editing.edit import Addition, Conflict
from specgen.editing.outline import Spot
from specgen.editing.values import is_same, read_typed
from specgen.model.field import Field, Node, Path, Schema, dotted_path
from specgen.model.problem import refuse
from specgen.model.suggest import suggest
from specgen.reading.positions import TBD, Text

# New keys below a section, each with its value or with the keys below it in turn.
New = dict[str, Any]


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
    """A section that gets new keys: where it stands and below which key, and its node of the schema."""

    spot: Spot
    node: Node
    path: Path
    key: Spot | None = None
    flow: bool = False  # whether what it stands in is written in braces
    new: New = field(default_factory=dict)


@dataclass(slots=True)
class Plan:
    """All that is to be written into one file, and what is not."""

    fills: list[Fill] = field(default_factory=list)
    growths: dict[int, Growth] = field(default_factory=dict)
    conflicts: list[Conflict] = field(default_factory=list)
    taken: dict[Path, Addition] = field(default_factory=dict)


def plan_edit(text: Text, outline: Spot, schema: Schema, additions: Iterable[Addition]) -> Plan:
    """The plan for these additions; raises Refused for a path that is no field."""
    planner = _Planner(text, outline, schema)
    for addition in additions:
        planner.add(addition)
    return planner.plan


class _Planner:
    def __init__(self, text: Text, outline: Spot, schema: Schema) -> None:
        self.text, self.outline, self.schema = text, outline, schema
        self.plan = Plan()

    def add(self, addition: Addition) -> None:
        asked = self.schema.field_at(addition.path)
        if asked is None:
            hint = suggest(dotted_path(addition.path), map(dotted_path, self.schema.fields))
            raise refuse(f"there is no field {dotted_path(addition.path)!r}", hint)
        given, offered = value_at(self.text.data, addition.path), read_typed(asked, addition.text)
        twin = self.plan.taken.get(addition.path)
        if given is not None and (given is not TBD or offered is TBD):
            if offered is not TBD and not is_same(asked, given, offered):
                self.refuse(addition, _say(given), "")
        elif twin is not None:
            if not is_same(asked, read_typed(asked, twin.text), offered):
                self.plan.conflicts.append(Conflict(addition.path, 0, twin.text, addition.text))
        elif self.place(addition, asked):
            self.plan.taken[addition.path] = addition

    def refuse(self, addition: Addition, given: str, reason: str, path: Path = ()) -> bool:
        place = self.text.places.get(path or addition.path)
        line = place.line if place else 0
        self.plan.conflicts.append(Conflict(addition.path, line, given, addition.text, reason))
        return False

    def place(self, addition: Addition, asked: Field) -> bool:
        """Find the place of an addition, and say whether there is one."""
        path, growth = addition.path, Growth(self.outline, self.schema.root, ())
        for depth, name in enumerate(path):
            here, spot, node = path[: depth + 1], growth.spot, growth.node
            fault = _find_fault(spot)
            if fault:
                return self.refuse(addition, "", fault, path[:depth])
            child = spot.child(name)
            if child is None:
                return self.grow(growth, addition, depth)
            key = next((key for key, value in spot.pairs if value is child), child)
            if depth == len(path) - 1:
                self.plan.fills.append(Fill(key, child, spot.flow, asked, addition))
                return True
            below = node.star if node.star is not None else node.children[name]
            growth = Growth(child, below, here, key, spot.flow)
        return False

    def grow(self, growth: Growth, addition: Addition, depth: int) -> bool:
        """Note the new keys of an addition from this depth of its path on, below a section that is there."""
        here = addition.path[: depth + 1]
        if len(here) < len(addition.path) and isinstance(value_at(self.text.data, here), (dict, list)):
            reason = f"{dotted_path(here)} comes with a merge key; write the section out to give it values of its own"
            return self.refuse(addition, "", reason, here)
        growth = self.plan.growths.setdefault(id(growth.spot), growth)
        new = growth.new
        for name in addition.path[depth:-1]:
            new = new.setdefault(name, {})
        new[addition.path[-1]] = addition
        return True


def _find_fault(spot: Spot) -> str:
    """Why nothing can be added to what stands here; empty if something can."""
    if spot.kind == "alias":
        return f"this section repeats *{spot.text}; write it out to give it values of its own"
    if spot.kind == "text" and spot.text and spot.text.lower() not in ("~", "null", "tbd"):
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
