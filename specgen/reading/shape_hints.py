"""What to write where a value has the wrong shape: the same in the right one, or an example from the schema."""

import re
from collections.abc import Iterator
from typing import Any

from specgen.model.field import Collection, Field, Node
from specgen.reading.choices import find_choice
from specgen.reading.plain_words import NOT_KNOWN_YET, says_none, says_not_known

_ALL = ("all", "all of them", "all of these", "every", "everything")
_APART = re.compile(r"[,;/&+]|\band\b")
_MOST_SHOWN = 2  # fields of a member


def show_list(field: Field, value: str) -> str:
    """What to write for a single value where a list is wanted."""
    if field.if_none and says_none(value):
        return f"write [] where {field.if_none}"
    if says_not_known(value):
        return NOT_KNOWN_YET
    return _show_choices(field, value) if field.of == "choice" else f"write [{value}]"


def _show_choices(field: Field, value: str) -> str:
    """The list of the choices that a text names; all of them where it says so, or names none."""
    if value.strip().lower() in _ALL:
        return f"write [{', '.join(field.values)}]"
    named = [find_choice(field, part.strip()) for part in _APART.split(value) if part.strip()]
    if named and all(name in field.values for name in named):
        return f"write [{', '.join(named)}]"
    return f"write one or more of these in brackets, such as {field.example}; known: {', '.join(field.values)}"


def show_section(node: Node, value: Any) -> str:
    """What to write for a value where a section has values by name."""
    return _tell(node, value, f"{node.path[-1]}: {{}}")


def show_members(collection: Collection, star: Node, value: Any) -> str:
    """What to write where a list, or members under marks, are wanted."""
    name = collection.path[-2]
    if isinstance(value, str) and collection.if_none and says_none(value):
        return f"write {name}: {{}} where {collection.if_none}"
    if collection.kind == "items":
        return f"{_tell(star, value, f'{name}: [{{}}]')}, braces for each {collection.one}"
    mark = collection.keys[0] if collection.keys else f"{collection.one[0].upper()}1"
    return f"{_tell(star, value, f'{name}: {{{{{mark}: {{}}}}}}')}, a mark for each {collection.one}"


def show_member(node: Node, value: Any) -> str:
    """What to write for a value where a member has values by name."""
    return _tell(node, value, "{}")


def _tell(node: Node, value: Any, form: str) -> str:
    """The form filled with what was written, where that can be told, else with an example."""
    own = _as_written(node, value)
    return f"write {form.format(own)}" if own else f"for example {form.format(_show_example(node))}"


def _as_written(node: Node, value: Any) -> str:
    """A value in the right shape; empty where it is of no use there."""
    kind = node.children["kind"].field if "kind" in node.children else None
    if isinstance(value, str):
        meant = find_choice(kind, value) if kind is not None else ""
        return f"{{kind: {meant}}}" if kind is not None and meant in kind.values else ""
    if isinstance(value, dict) and value and value.keys() <= node.children.keys():
        plain = [f"{name}: {given}" for name, given in value.items() if isinstance(given, str)]
        return f"{{{', '.join(plain[:_MOST_SHOWN])}{', ...' if len(value) > len(plain[:_MOST_SHOWN]) else ''}}}"
    return ""


def _show_example(node: Node) -> str:
    if node.field is not None:
        return node.field.example
    shown = [f"{name}: {example}" for name, example in _examples(node)][:_MOST_SHOWN]
    return f"{{{', '.join(shown)}{', ...' if len(node.children) > len(shown) else ''}}}"


def _examples(node: Node) -> Iterator[tuple[str, str]]:
    """What stands in a section, each with an example: fields, and sections that have a kind."""
    for name, child in node.children.items():
        kind = child.children.get("kind")
        if child.field is not None:
            yield name, child.field.example
        elif kind is not None and kind.field is not None:
            yield name, f"{{kind: {kind.field.example}}}"
