"""Starters: a file of the fields asked for, each empty below its comment, from the schema alone."""

from collections.abc import Callable
from typing import NamedTuple

from specgen.model.field import Field, Node, Path, Schema
from specgen.reading.side_files import BESIDE, SIDE_FILES
from specgen.terminal.field_lines import MARKS, format_comment, format_field_lines
from specgen.terminal.starter_words import ABOUT, ALWAYS, MAY, project_head, side_head, tell_side_file

# The stages in their order, and the purpose of a package at the end of each.
PURPOSES = {
    "verdict": "design_draft",
    "mockup": "mockup_submittal",
    "work": "work_submittal",
    "closeout": "closeout",
}
_STAGES = tuple(PURPOSES)
_OPTIONAL = "optional"
_VERSION = ("format",)
_STEP = 2  # blanks to a level


class _Choice(NamedTuple):
    """Which fields a starter asks for, which it offers, and what it fills in itself."""

    asks: Callable[[Field], bool]
    offers: Callable[[Field], bool]
    given: dict[Path, str]
    units: str


def format_starter(schema: Schema, stage: str, units: str) -> str:
    """The text of a project file with all that is asked for up to a stage; `units` is ip or si."""
    reached = _STAGES[: _STAGES.index(stage) + 1]
    given = {_VERSION: "1", ("package", "purpose"): PURPOSES[stage]}
    given |= {("package", "units"): "si"} if units == "si" else {}

    def asks(field: Field) -> bool:
        named = field.path[0] in SIDE_FILES or field.path in given
        return named or (field.home == "project" and field.ring in reached and not field.default)

    begun = _list_begun(schema)

    def offers(field: Field) -> bool:
        stages = (begun[field.path[:depth]] for depth in range(len(field.path), 0, -1) if field.path[:depth] in begun)
        return field.home == "project" and next(stages, "") in reached

    return _format(schema, project_head(stage, units), _Choice(asks, offers, given, units))


def _list_begun(schema: Schema) -> dict[Path, str]:
    """The first stage at which a field, or anything in a section, is owed; what is optional comes with its section."""
    begun: dict[Path, str] = {}
    for stage in _STAGES:
        owed = (path for path, field in schema.fields.items() if (field.ring, field.home) == (stage, "project"))
        for path in owed:
            for depth in range(1, len(path) + 1):
                begun.setdefault(path[:depth], stage)
    return begun


def format_side_starter(schema: Schema, home: str, units: str) -> str:
    """The text of a firm file or a coating system file; its documents and, in a firm file, its crews are offered."""

    def asks(field: Field) -> bool:
        return field.path == _VERSION or (field.home == home and field.ring != _OPTIONAL and not field.default)

    def offers(field: Field) -> bool:
        return field.home == home or field.path[0] in BESIDE[home]

    return _format(schema, side_head(home, units), _Choice(asks, offers, {_VERSION: "1"}, units))


def _format(schema: Schema, head: tuple[str, ...], choice: _Choice) -> str:
    lines = format_comment(head, 0)
    offered: list[str] = []
    for name, node in schema.root.children.items():
        if _is_asked(node, choice):
            lines += ["", *_lines(node, name, 0, choice)]
        elif _holds(node, choice.offers):
            offered += ["", *_offer(node, name, 0, choice)]
    return "\n".join([*lines, *(["", f"# {MAY}"] if offered else []), *offered]) + "\n"


def _is_asked(node: Node, choice: _Choice) -> bool:
    """Whether something is asked for at a place or below it; a collection that may be left out is only offered."""
    return _holds(node, choice.asks) and not (node.collection is not None and node.collection.optional)


def _holds(node: Node, wanted: Callable[[Field], bool]) -> bool:
    if node.field is not None:
        return wanted(node.field)
    below = [node.star] if node.star is not None else node.children.values()
    return any(_holds(child, wanted) for child in below)


def _lines(node: Node, name: str, indent: int, choice: _Choice) -> list[str]:
    """The lines of a field, section or collection of which something is asked for."""
    if node.field is not None:
        return _field(node.field, name, indent, choice)
    head = [*format_comment(_about(node, name), indent), f"{' ' * indent}{name}:"]
    inner = indent + _STEP
    if node.star is None:
        return [*head, *_section(node, inner, choice)]
    if node.star.field is not None:
        return [*head, *_lines(node.star, MARKS[name], inner, choice)]
    listed = node.collection is not None and node.collection.kind == "items"
    mark = f"{' ' * inner}{'-' if listed else f'{MARKS[name]}:'}"
    return [*head, mark, *_section(node.star, inner + _STEP, choice)]


def _field(field: Field, name: str, indent: int, choice: _Choice) -> list[str]:
    """A field and its empty key, or the value that the starter gives; for a side file how its own starter is made."""
    key = f"{' ' * indent}{name}: {choice.given.get(field.path, '')}".rstrip()
    return [key] if field.path == _VERSION else [*_comment(field, name, indent, choice.units), key]


def _comment(field: Field, name: str, indent: int, units: str) -> list[str]:
    """The comment over a field; over one that names a side file, how that one is begun."""
    if field.path[0] in SIDE_FILES:
        return format_comment(tell_side_file(name, field.example), indent)
    return format_field_lines(field, name, indent, units)[:-1]


def tell_made(node: Node, path: Path) -> list[str]:
    """The comment over a section or collection at a path, without its blanks and signs."""
    indent = _STEP * (len(path) - 1)
    return [line[indent + 2 :] for line in format_comment(_about(node, path[-1]), indent)]


def tell_empty_field(field: Field, name: str, indent: int, units: str) -> list[str]:
    """The comment over an empty field that stands `indent` blanks in, without its blanks and signs."""
    return [line[indent + 2 :] for line in _comment(field, name, indent, units)]


def _section(node: Node, indent: int, choice: _Choice) -> list[str]:
    """What is asked for in a section, then what may be given there."""
    lines: list[str] = []
    offered: list[str] = []
    after_field = True
    for name, child in node.children.items():
        if _is_asked(child, choice):
            apart = lines and not (after_field and child.field)
            lines += [*([""] if apart else []), *_lines(child, name, indent, choice)]
            after_field = child.field is not None
        elif _holds(child, choice.offers):
            offered += _offer(child, name, indent, choice)
    return [*lines, *(["", *format_comment([MAY], indent)] if offered else []), *offered]


def _offer(node: Node, name: str, indent: int, choice: _Choice) -> list[str]:
    """The lines of what may be given: from its key on behind a #, which taken away leaves each line in its place."""
    lines = _lines(node, name, indent, choice._replace(asks=choice.offers))
    sign = f"{' ' * indent}#"
    key = next(place for place, line in enumerate(lines) if not line.startswith(sign))
    return [*lines[:key], *(f"{sign}{line[indent:]}" for line in lines[key:] if line)]


def _about(node: Node, name: str) -> tuple[str, ...]:
    """The words over a section or collection, each a comment."""
    entry = node.collection
    if entry is None:
        return (ABOUT[name],) if name in ABOUT else ()
    if entry.keys:
        return (f"{entry.label}: under the name of each of {', '.join(entry.keys)}",)
    listed = entry.kind == "items"
    how = "begun by a dash" if listed else "under its mark"
    always = entry.optional or name in ALWAYS
    empty = "" if always else f"; {name}: {'[]' if listed else '{}'} where there are none"
    return (f"{entry.label}: the lines below for each {entry.one}, {how}{empty}",)
