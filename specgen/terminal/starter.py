"""A commented starter file from the schema: the fields of one ring, each with example, reason and owner."""

from collections.abc import Iterator

from specgen.model.field import Field, Node, Schema
from specgen.model.value_text import words
from specgen.quantities.format import format_decimal
from specgen.quantities.parse import QuantityError, parse_quantity
from specgen.quantities.quantity import find_dimension

RINGS = ("verdict", "mockup", "work", "closeout")
# Required fields are not commented out; their example is to be changed.
_GIVEN = {
    ("format",): "1",
    ("package", "purpose"): "design_draft",
    ("project", "name"): "New project",
    ("walls", "*", "substrate", "kind"): "glass_mat_gypsum",
    ("walls", "*", "attachment", "method"): "adhesive_notched_trowel",
}
_MARKS = {
    "walls": "W1",
    "elevations": "E1",
    "joints": "J1",
    "sealants": "S1",
    "colors": "C1",
    "guns": "G1",
    "hoses": "H1",
    "people": "P1",
    "instruments": "M1",
    "attachments": "A1",
    "crews": "red",
    "openings": "A",
    "floor_lines": "F1",
    "joint_needs": "N1",
    "access": "X1",
    "shade": "X1",
    "deviations": "DV1",
    "items": "I1",
    "rates": "gloss",
}


def format_starter(schema: Schema, ring: str, units: str) -> str:
    """The text of a starter for a ring; `units` is ip or si. All lines but the required ones are commented out."""
    lines = [
        f"# Project description, stage: {ring}. Remove the # from a line and enter your value.",
        "# Quantities carry their unit; `tbd` or a line left out counts as not known yet.",
    ]
    for name, node in schema.root.children.items():
        lines += _lines(node, name, 0, ring, units, "")
    return "\n".join(lines) + "\n"


def _lines(node: Node, name: str, depth: int, ring: str, units: str, off: str) -> list[str]:
    """The lines of a node; `off` is the comment sign of a collection that is commented out as a whole."""
    if node.field is not None:
        return list(_leaf(node.field, name, depth, ring, units, off))
    if node.star is not None:
        return _collection(node, name, depth, ring, units, off)
    inner = [
        line
        for child, child_node in node.children.items()
        for line in _lines(child_node, child, depth + 1, ring, units, off)
    ]
    return [f"{off}{'  ' * depth}{name}:", *inner] if inner else []


def _leaf(field: Field, name: str, depth: int, ring: str, units: str, off: str) -> Iterator[str]:
    given = "si" if units == "si" and field.path == ("package", "units") else _GIVEN.get(field.path)
    if given is None and (field.ring != ring or field.home == "record"):
        return
    value = given if given is not None else _example(field, units)
    why = f"{field.label}: {field.why}" + (f" ({words(field.owed_by)})" if field.owed_by else "")
    choices = f"; one of {', '.join(field.values)}" if field.values and len(field.values) < 16 else ""
    sign = "" if given is not None else "# " if not off else ""
    yield f"{off}{'  ' * depth}{sign}{name}: {value}  # {why}{choices}".replace("\n", " ")


def _collection(node: Node, name: str, depth: int, ring: str, units: str, off: str) -> list[str]:
    assert node.star is not None and node.collection is not None
    needed = name == "walls"
    sign = off or ("" if needed else "# ")
    mark = _MARKS.get(name, "M1")
    listed = node.collection.kind == "items"
    if node.star.field is not None:
        inner = list(_leaf(node.star.field, mark, depth + 1, ring, units, sign))
    else:
        inner = [
            line
            for child, child_node in node.star.children.items()
            for line in _lines(child_node, child, depth + 2, ring, units, sign)
        ]
    if not inner:
        return []
    head = [f"{sign}{'  ' * depth}{name}:"]
    if node.star.field is None:
        if listed:
            first = len(sign) + 2 * (depth + 1)
            inner[0] = f"{inner[0][:first]}- {inner[0][first + 2 :]}"
        else:
            head.append(f"{sign}{'  ' * (depth + 1)}{mark}:  # the mark used on the drawings")
    return head + inner


def _example(field: Field, units: str) -> str:
    """The example of the schema in the given unit system; text that YAML would misread is quoted."""
    text = field.example
    if field.to:
        return f"[{_MARKS[field.to]}]" if field.kind == "list" else _MARKS[field.to]
    if units == "si" and field.kind == "quantity":
        try:
            quantity = parse_quantity(text, find_dimension(field.dimension, field.unit_ip))
            text = f"{format_decimal(quantity.to(field.unit_si), 2)} {field.unit_si}"
        except QuantityError:
            return text
    quoted = field.kind in ("text", "file") or '"' in text or ": " in text
    return "'" + text.replace("'", "''") + "'" if quoted and not text.startswith("[") else text
