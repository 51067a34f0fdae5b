"""The schema for editors as JSON Schema (draft 2020-12), built from the entries that the reader uses."""

from typing import Any

from specgen.model.field import Field, Node, Schema
from specgen.quantities.number import DECIMAL, PARTS
from specgen.reading.rules import REQUIRED
from specgen.reading.side_files import BESIDE, SIDE_FILES

# An editor reads YAML by its own types, so yes may come as true and a date as text.
_YES_NO = {"enum": ["yes", "no", True, False]}
_OPEN = {"enum": ["tbd", None, ""]}
_NUMBER = rf"^({DECIMAL}|{PARTS})$"
# A percentage below 1 needs its sign, as it may be meant as a share.
_PERCENT = rf"^(({DECIMAL}|{PARTS})\s*%|[+-]?(0|0*[1-9]\d{{0,14}}(\.\d{{0,15}})?))$"
_SHARE = {"exclusiveMinimum": 0, "exclusiveMaximum": 1}
_PATTERNS = {"date": r"^\d{4}-\d{2}-\d{2}$", "time": r"^([01]?\d|2[0-3]):[0-5]\d$", "quantity": r"\D"}
FILES = ("project", "firm", "coating_system", "record")
# What a project must have to be read; a side file may hold any part.
_REQUIRED = {"project": sorted({(section + place)[0] for section, places in REQUIRED.items() for place in places})}


def json_schema(schema: Schema, file: str = "project") -> dict[str, Any]:
    """The JSON Schema of one kind of file: project, firm, coating_system or record."""
    root = _object(schema.root, file)
    root["properties"]["format"] = {"const": 1, "description": "version of the file form"}
    head = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"specgen {file.replace('_', ' ')} file",
    }
    return head | root | {"required": _REQUIRED.get(file, [])}


def _object(node: Node, file: str) -> dict[str, Any]:
    properties = {name: inner for name, child in node.children.items() if (inner := _node(child, file)) is not None}
    return {"type": "object", "properties": properties, "additionalProperties": False}


def _node(node: Node, file: str) -> dict[str, Any] | None:
    """The schema of a node; None if nothing of it belongs in this kind of file."""
    if not _stands_in(node, file):
        return None
    if node.field is not None:
        return {"anyOf": [_field(node.field), _OPEN], "description": _describe(node.field)}
    if node.star is not None and node.collection is not None:
        inner = _node(node.star, file) or {}
        listed = {"type": "array", "items": inner}
        keyed = _object(node, file) | {"additionalProperties": inner}
        if node.collection.keys:
            keyed["propertyNames"] = {"enum": list(node.collection.keys)}
        shape = listed if node.collection.kind == "items" else keyed
        return {"anyOf": [shape, _OPEN], "description": node.collection.label}
    return {"anyOf": [_object(node, file), _OPEN]}


def _stands_in(node: Node, file: str) -> bool:
    """Whether a node belongs in a kind of file: all but records in a project file, else what is at home there.

    Firm and coating system files hold their own attachments too, and a firm file its crews.
    """
    homes = _homes(node)
    if file == "project":
        return bool(homes - {"record"})
    return file in homes or (file in SIDE_FILES and bool(node.path) and node.path[0] in BESIDE[file])


def _homes(node: Node) -> set[str]:
    if node.field is not None:
        return {node.field.home}
    inner = [*node.children.values(), *([node.star] if node.star is not None else [])]
    return set().union(*(_homes(child) for child in inner))


def _field(field: Field) -> dict[str, Any]:
    if field.kind == "list":
        return {"type": "array", "items": _single(field, field.of)}
    return _single(field, field.kind)


def _single(field: Field, kind: str) -> dict[str, Any]:
    if kind == "choice":
        numbers = [int(v) if v.isdigit() else float(v) for v in field.values if v.replace(".", "", 1).isdigit()]
        return {"enum": [*field.values, *numbers]}
    if kind == "yes_no":
        return _YES_NO
    if kind == "integer":
        return {"type": "integer"} | _bounds(field)
    if kind == "number":
        return {"anyOf": [{"type": "number"} | _bounds(field), {"type": "string", "pattern": _NUMBER}]}
    if kind == "percent":
        number = {"type": "number", "not": _SHARE} | _bounds(field)
        return {"anyOf": [number, {"type": "string", "pattern": _PERCENT}]}
    if kind in _PATTERNS:
        return {"type": "string", "pattern": _PATTERNS[kind]}
    return {"type": ["string", "number"]}


def _bounds(field: Field) -> dict[str, float]:
    bounds = {"minimum": field.least, "maximum": field.most}
    return {word: float(bound) for word, bound in bounds.items() if bound}


def _describe(field: Field) -> str:
    asked = f"; ring {field.ring}, owed by {field.owed_by.replace('_', ' ')}" if field.owed_by else ""
    order = f"; not below {' or '.join(field.not_below)}" if field.not_below else ""
    return f"{field.label}: {field.why}{order}; for example {field.example}{asked}"
