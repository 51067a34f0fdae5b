"""A value and a key as YAML has them: as typed where that is read as meant, else in quotes."""

import json
from functools import cache
from typing import Any

import yaml

from specgen.model.field import Field, Node, Path, Schema
from specgen.reading.conversion import InvalidValue, convert
from specgen.reading.list_text import compose_text, split_list
from specgen.reading.unknown import TBD, is_unknown

# A collection that has no members, by its kind.
NONE = {"mapping": "{}", "items": "[]"}
# Kinds whose text another reader of YAML might take for a number, a date or a yes.
_WORDED = {"text", "file", "reference", "choice"}


def find_entry(schema: Schema, path: Path) -> Field | None:
    """The field at a path; for a collection, where it is said to have no members, a field of that kind."""
    try:
        return entry_of(schema.node(path))
    except KeyError:
        return None


def entry_of(node: Node) -> Field | None:
    """The field of a node, or that which says that a collection has no members."""
    collection = node.collection
    if node.field is not None or collection is None:
        return node.field
    return Field(path=node.path, label=collection.label, kind=collection.kind)


def write_value(field: Field, text: str, flow: bool) -> str:
    """The text of a value of a field, for a section in braces where `flow` says so."""
    if is_unknown(text):
        return text
    if field.kind in NONE:
        return NONE[field.kind]
    if field.kind == "list":
        kind = field.of or "text"
        return f"[{', '.join(_write(entry, kind, True) for entry in split_list(text))}]"
    return _write(text, field.kind, flow)


def write_entries(field: Field, text: str) -> list[str]:
    """The entries of a list that has a line for each, as values; none for any other value."""
    if field.kind != "list" or not field.lines or is_unknown(text):
        return []
    return [_write(entry, field.of or "text", False) for entry in split_list(text)]


def write_key(name: str, flow: bool) -> str:
    """The text of a key."""
    return name if _is_word(name) and _is_read(name, flow) else _quote(name)


def read_typed(field: Field, text: str) -> Any:
    """What a file with this value holds: a text, a list of texts, or TBD for an empty one."""
    if is_unknown(text):
        return TBD
    if field.kind in NONE:
        return [] if field.kind == "items" else {}
    return split_list(text) if field.kind == "list" else _unquote(text)


def is_same(field: Field, given: Any, offered: Any) -> bool:
    """Whether two values as read from a file, texts or lists of them, mean the same."""
    if isinstance(given, list) and isinstance(offered, list):
        pairs = zip(given, offered, strict=False)
        return len(given) == len(offered) and all(is_same(field, one, other) for one, other in pairs)
    if given == offered or field.kind in NONE:
        return bool(given == offered)
    try:
        return bool(convert(field, given) == convert(field, offered))
    except (InvalidValue, TypeError, AttributeError):
        return False


def _write(text: str, kind: str, flow: bool) -> str:
    if _is_quoted(text):
        return text
    plain = _is_read(text, flow) and (kind not in _WORDED or _is_word(text))
    return text if plain else _quote(text)


def _quote(text: str) -> str:
    if text.isprintable():
        return "'" + text.replace("'", "''") + "'"
    return json.dumps(text, ensure_ascii=False)


def _is_quoted(text: str) -> bool:
    """Whether a text as typed stands in quotes as a whole."""
    if text[:1] not in ("'", '"') or text[-1:] != text[:1] or len(text) < 2:
        return False
    node = compose_text(text)
    return isinstance(node, yaml.ScalarNode) and bool(node.style)


def _unquote(text: str) -> str:
    node = compose_text(text) if _is_quoted(text) else None
    return text if node is None else str(node.value)


def _is_read(text: str, flow: bool) -> bool:
    """Whether a text is read as it stands, as the plain value of a key."""
    node = compose_text(f"{{{text}: {text}}}" if flow else f"{text}: {text}")
    if not isinstance(node, yaml.MappingNode) or len(node.value) != 1:
        return False
    return all(isinstance(one, yaml.ScalarNode) and not one.style and one.value == text for one in node.value[0])


@cache
def _is_word(text: str) -> bool:
    """Whether every reader of YAML takes a plain text for a text."""
    resolver: Any = yaml.SafeLoader("")
    return bool(resolver.resolve(yaml.ScalarNode, text, (True, False)) == "tag:yaml.org,2002:str")
