"""Projects drawn at random from the schema: any share of the fields given, in either unit system, all of it readable.

`draw_project(seed)` is the content of a project file; the same seed gives the same. A field, choice or collection that
is added to the schema is drawn from then on.
"""

import copy
import random
from collections.abc import Iterator
from datetime import date, timedelta
from functools import cache
from typing import Any

import yaml

from specgen.model.field import Field, Node, Path
from specgen.quantities.quantity import Quantity
from specgen.reading.conversion import InvalidValue
from specgen.reading.rules import REQUIRED, convert_checked
from specgen.reading.schema import project_schema

SCHEMA = project_schema()
# Side files, lines of the contract, whose field, relation and value must fit together, and answers to given values.
LEFT_OUT = {("format",), ("firm",), ("coating_system",), ("records",), ("contract", "demands"), ("package", "units")}
LEFT_OUT |= {("answers",)}
# It must lie in its time zone, and stand beside it.
LEFT_OUT |= {("site", "longitude")}
ALWAYS = {section + place for section, places in REQUIRED.items() for place in places}
SHARES = (0.1, 0.3, 0.5, 0.7, 0.9, 1)
# Walls are laid out in steps, which are exact numbers.
STEPS = {"ip": (3, "ft"), "si": (0.9, "m")}


def draw_project(seed: int) -> dict[str, Any]:
    """The content of a project file, as plain data of texts, mappings and lists."""
    draw = _Draw(random.Random(seed))
    made = draw.section(SCHEMA.root)
    made["package"] = {"units": draw.system} | made["package"]
    _lay_out(draw, made)
    return {"format": "1"} | made


def thin_out(data: dict[str, Any], seed: int, share: float) -> dict[str, Any]:
    """A project with a share of its fields, all members and what must be given among them.

    It can be read if the whole can: no field makes another one wrong by being left away.
    """
    return _thin(data, SCHEMA.root, random.Random(seed), share)


def _thin(data: Any, node: Node, chance: random.Random, share: float) -> Any:
    if node.star is not None:
        entries = ((mark, _thin(entry, node.star, chance, share)) for mark, entry in _entries(data))
        return [entry for _, entry in entries] if isinstance(data, list) else dict(entries)
    if node.field is not None or not isinstance(data, dict):
        return data
    kept = {}
    for name, value in data.items():
        child = node.children[name]
        if child.field is None or child.path in LEFT_OUT or _is_needed(child.path) or chance.random() < share:
            kept[name] = _thin(value, child, chance, share)
    return kept


def _entries(data: Any) -> list[tuple[Any, Any]]:
    return list(data.items() if isinstance(data, dict) else enumerate(data or ()))


def draw_anew(data: dict[str, Any], seed: int, number: int) -> dict[str, Any]:
    """A project with some of its choices and figures drawn anew; what comes out may not fit together."""
    draw = _Draw(random.Random(seed))
    changed = copy.deepcopy(data)
    places = [place for place in _places(changed, SCHEMA.root) if not _is_needed(place[2].path)]
    for holder, name, field in draw.chance.sample(places, number):
        holder[name] = draw._single(field)
    return changed


def _places(data: Any, node: Node) -> Iterator[tuple[Any, Any, Field]]:
    """Where a choice or a figure stands: what holds it, under which name, and its field."""
    for name, value in _entries(data) if isinstance(data, dict | list) else ():
        below = node.below(name)
        if below is None or below.path in LEFT_OUT:
            continue
        if below.field is None:
            yield from _places(value, below)
        elif below.field.kind in ("choice", "yes_no", "integer", "number", "percent", "quantity"):
            yield data, name, below.field


def count_values(data: Any) -> int:
    """How many values plain data holds, an empty list or mapping being one."""
    if not data or not isinstance(data, dict | list):
        return 1
    return sum(map(count_values, data.values() if isinstance(data, dict) else data))


class _Draw:
    """One draw: its chance, its unit system, the share of fields it gives, and the marks of its members."""

    def __init__(self, chance: random.Random) -> None:
        self.chance = chance
        self.system, self.share = chance.choice(["ip", "si"]), chance.choice(SHARES)
        self.marks: dict[str, list[str]] = {}
        for (name, *below), collection in SCHEMA.collections.items():
            if below == ["*"] and collection.kind == "mapping" and self._gives((name,)):
                least = 1 if _is_needed((name,)) else 0
                self.marks[name] = [f"{name[0].upper()}{number}" for number in range(chance.randint(least, 3))]

    def _gives(self, path: Path) -> bool:
        return _is_needed(path) or self.chance.random() < self.share

    def section(self, node: Node) -> dict[str, Any]:
        """The fields, sections and members below a node that are given."""
        made = {}
        for name, child in node.children.items():
            if child.path in LEFT_OUT or _is_record(child.path):
                continue
            value = self._child(name, child) if name in self.marks or self._gives(child.path) else None
            if value is not None:
                made[name] = value
        return _in_order(made, node)

    def _child(self, name: str, node: Node) -> Any:
        if node.field is not None:
            return self._value(node.field)
        star, collection = node.star, node.collection
        if star is None or collection is None:
            return self.section(node)
        if collection.kind == "items":
            return [self.section(star) for _ in range(self.chance.randint(0, 3))]
        if len(node.path) == 1:
            marks = self.marks.get(name, [])
        else:
            marks = self.chance.sample(collection.keys, min(3, len(collection.keys))) or ["A", "B"]
        if star.field is None:
            return {mark: self.section(star) for mark in marks}
        return {mark: self._value(node.below(mark).field) for mark in marks}

    def _value(self, field: Field) -> Any:
        """A text, or a list of texts; None where there is nothing to refer to."""
        listed = field.kind == "list"
        if field.to:
            marks = self.marks.get(field.to, [])
            number = self.chance.randint(0, len(marks)) if listed else 1
            chosen = self.chance.sample(marks, min(number, len(marks)))
            return chosen if listed else chosen[0] if chosen else None
        if (field.of or field.kind) in ("text", "file"):
            return yaml.load(field.example, Loader=yaml.BaseLoader)
        if listed:
            return sorted({self._single(field) for _ in range(self.chance.randint(0, 3))})
        return self._single(field)

    def _single(self, field: Field) -> str:
        kind, chance = field.of or field.kind, self.chance
        if kind == "choice":
            return chance.choice(field.values)
        if kind == "yes_no":
            return chance.choice(["yes", "no"])
        if kind == "date":
            return (date(2027, 1, 1) + timedelta(days=chance.randint(0, 300))).isoformat()
        if kind == "time":
            return f"{chance.randint(0, 23):02}:{chance.choice([0, 15, 30]):02}"
        if kind == "bearing":
            return f"{chance.randint(0, 360)} deg"
        # Figures that anyone would write pass more often than any others.
        usual = field.default or field.example
        if field.kind != "list" and chance.random() < 0.5:
            return usual if kind != "quantity" or self.system == "ip" else _in_system(field, usual)
        return self._figure(field, kind)

    def _figure(self, field: Field, kind: str) -> str:
        """A figure between the bounds of a field, with as few digits as lie between them."""
        unit = "" if kind != "quantity" else field.unit_ip if self.system == "ip" else field.unit_si
        bounds = (convert_checked(field, bound) for bound in (field.least or "0", field.most or "9"))
        amount = self.chance.uniform(*(bound.number(unit) if unit else float(bound) for bound in bounds))
        texts = (f"{amount:.{digits}f} {unit}".strip() for digits in range(12))
        return next((text for text in texts if _fits(field, text)), field.example)


def _is_needed(path: Path) -> bool:
    """Whether a project must have something at a path, or below it."""
    return any(needed[: len(path)] == path for needed in ALWAYS)


@cache
def _is_record(path: Path) -> bool:
    """Whether all below a path is of the record."""
    return all(field.home == "record" for below, field in SCHEMA.fields.items() if below[: len(path)] == path)


def _fits(field: Field, text: str) -> bool:
    try:
        convert_checked(field, text)
    except InvalidValue:
        return False
    return True


def _in_system(field: Field, text: str) -> str:
    """A figure of a field in its metric unit, rounded as far as its bounds let it."""
    value: Quantity = convert_checked(field, text)
    texts = (f"{value.number(field.unit_si):.{digits}f} {field.unit_si}" for digits in range(1, 12))
    return next((rounded for rounded in texts if _fits(field, rounded)), text)


def _in_order(made: dict[str, Any], node: Node) -> dict[str, Any]:
    """The values of a section, each one that lies below what it must not lie below raised to that."""
    for name, child in node.children.items():
        for other in child.field.not_below if child.field is not None and name in made else ():
            beside = node.children[other].field
            assert child.field is not None and beside is not None
            if other in made and convert_checked(child.field, made[name]) < convert_checked(beside, made[other]):
                made[name] = made[other]
    return made


def _lay_out(draw: _Draw, made: dict[str, Any]) -> None:
    """Put openings, lines and joints where they can stand: whole steps, each opening in a field of three by three."""
    chance, (size, unit) = draw.chance, STEPS[draw.system]

    def place(member: dict[str, Any], **steps: int) -> None:
        member |= {name: f"{number * size:g} {unit}" for name, number in steps.items() if name in member}

    for face in made.get("elevations", {}).values():
        wide, high = chance.randint(6, 12), chance.randint(6, 9)
        place(face, width=wide, height=high, base_above_grade=chance.randint(0, 3))
        if "outline" in face:
            # A gable whose eaves lie over all openings.
            gable = ((0, 0), (wide, 0), (wide, 6), (chance.randint(0, wide), high), (0, 6))
            face["outline"] = [f"{x * size:g} {unit}, {y * size:g} {unit}" for x, y in gable]
        for n, opening in enumerate(face.get("openings", {}).values()):
            place(opening, x=3 * n, y=3 * chance.randint(0, 1), width=chance.randint(1, 3), height=chance.randint(1, 3))
        for line in face.get("floor_lines", {}).values():
            place(line, height=chance.randint(0, high))
        for zone in face.get("impact_zones", []):
            lower = chance.randint(0, high)
            place(zone, **{"from": lower, "to": chance.randint(lower, high)})
        layout = face.get("layout", {})
        for name, most in (("vertical_lines", wide), ("horizontal_lines", high)):
            if name in layout:
                layout[name] = [f"{n * size:g} {unit}" for n in sorted(chance.sample(range(1, most), 2))]
    for joint in made.get("joints", {}).values():
        place(joint, at=chance.randint(0, 6))
    for detail in made.get("details", {}).values():
        sides = {name: chance.randint(1, 3) for name in ("width", "height")}
        place(detail, x=chance.randint(0, 3), y=chance.randint(0, 3), **sides)
    for access in made.get("access", {}).values():
        if "ties" in access:
            access["ties"] = [f"{n * size:g} {unit}, {n * size:g} {unit}" for n in (0, chance.randint(1, 6))]
    place(made.get("building", {}), eifs_top=12 + chance.randint(0, 3))
