"""What is open as text: who answers for it, and each field with an example value, as it is typed."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from specgen.model.field import Field, Node, Path
from specgen.model.finding import Judgment, OpenItem
from specgen.model.problem import Problem, Refused
from specgen.model.project import Project
from specgen.model.suggest import suggest
from specgen.model.value_text import count, words
from specgen.terminal.field_lines import MARKS
from specgen.terminal.finding_text import give_example, tell_owner
from specgen.terminal.next_command import name_next, tell_next
from specgen.terminal.package_text import describe_package
from specgen.terminal.ranges import join_marks
from specgen.terminal.screen import Line, Screen, show_lines

_MOST_HELD = 6
# The clause that stops a package for what is open.
OPEN_RULE = "SUB-09b"


class OpenField(NamedTuple):
    """A field that a package or a clause waits for."""

    path: str  # dotted
    example: str  # a value for it, as it is typed
    why: str  # its name and the reason it is asked for
    owed_by: str  # the role that answers for it
    held: tuple[str, ...]  # codes of the clauses that wait for it
    ring: str  # of a field that is not owed yet; else empty


def list_open(project: Project, judgment: Judgment) -> list[OpenField]:
    """Every field that anything waits for, in the order in which it is asked for: owed now, then by clauses alone."""
    waiting: dict[str, dict[str, None]] = {}
    for clause in judgment.not_judged:
        for need in clause.needs:
            waiting.setdefault(need, {})[clause.code] = None
    owed = {item.path: item for item in judgment.open_items}
    paths = (*owed, *(need for need in waiting if need not in owed))
    found = (_describe_field(project, path, owed.get(path), tuple(waiting.get(path, ()))) for path in paths)
    asked = {path: number for number, path in enumerate(project.schema.fields)}
    known = [one for one in found if one is not None]
    return sorted(known, key=lambda one: asked[_find_entry(project, one.path)[1].path])


def _describe_field(project: Project, path: str, item: OpenItem | None, held: tuple[str, ...]) -> OpenField | None:
    """The field at a path, or the collection with one of its fields; None for what no field describes."""
    try:
        node, field = _find_entry(project, path)
    except KeyError:
        return None
    entry = node.field or node.collection
    example = give_example(project, field) if node.field is not None else _give_member(project, node, field)
    label = entry.label if entry is not None else field.label
    why = f"{label}: {field.why}" if node.field is not None else label
    owed_by = item.owed_by if item is not None else field.owed_by
    return OpenField(path, example, why, owed_by or "applicator", held, "" if item is not None else field.ring)


def _find_entry(project: Project, path: str) -> tuple[Node, Field]:
    """The node at a path, and its field or the first that a member of it owes; KeyError where there is none."""
    node = project.schema.node(tuple(path.split(".")))
    below = node if node.star is None else node.star
    field = node.field or next(_list_fields(below), None)
    if field is None:
        raise KeyError(path)
    return node, field


def _list_fields(node: Node) -> Iterator[Field]:
    """The fields at and below a node, without those of collections below it."""
    if node.field is not None:
        yield node.field
    for child in node.children.values():
        if child.star is None:
            yield from _list_fields(child)


def _give_member(project: Project, node: Node, field: Field) -> str:
    """A first member with one of its fields, on one line: `{E1: {wall: W1}}`."""
    below: Path = field.path[len(node.path) + 1 :]
    value = _quote_in_braces(give_example(project, field))
    for name in reversed(below):
        value = f"{{{name}: {value}}}"
    listed = node.collection is not None and node.collection.kind == "items"
    return f"[{value}]" if listed else f"{{{MARKS.get(node.path[-1], 'M1')}: {value}}}"


def _quote_in_braces(text: str) -> str:
    """A value as it is typed within braces, where a comma or a bracket would end it."""
    plain = not text.startswith(("[", "'", '"'))
    return f"'{text}'" if plain and any(sign in text for sign in ",[]{}") else text


def describe_item(project: Project, item: OpenItem, number: int) -> Line:
    """An open item in one line: what it is, whose, and what is typed."""
    found = _describe_field(project, item.path, item, item.holds_up)
    typed = f"; add {item.path}: {found.example}" if found is not None else ""
    head = f"{number}. open item  "
    text = f"{head}{item.path}, {item.label}; by: {tell_owner(project, item.owed_by)}{typed}"
    return Line(text, 7, "open item", "stop")


def list_parties(project: Project, items: Iterable[OpenItem]) -> Iterator[Line]:
    """How many items each party answers for."""
    counts: dict[str, int] = {}
    for item in items:
        counts[item.owed_by] = counts.get(item.owed_by, 0) + 1
    for role, number in sorted(counts.items(), key=lambda pair: -pair[1]):
        yield Line(f"  {tell_owner(project, role)}: {number}", 4)


def format_open(project: Project, judgment: Judgment, party: str, screen: Screen, file: str) -> str:
    """Every open field by the party that answers for it, or those of one; raises Refused for another name."""
    following = name_next(project, judgment, file, "open")
    lines = [*describe_package(project, judgment), *_describe_open(project, judgment, party)]
    return show_lines([*lines, *tell_next(following)], screen)


def _describe_open(project: Project, judgment: Judgment, party: str = "") -> Iterator[Line]:
    by_role: dict[str, list[OpenField]] = {}
    for one in list_open(project, judgment):
        by_role.setdefault(one.owed_by, []).append(one)
    chosen = _choose_role(project, by_role, party) if party else ""
    for role, fields in by_role.items():
        if chosen in ("", role):
            title = tell_owner(project, role)
            yield from (Line(), Line(f"{title[:1].upper()}{title[1:]}: {count(len(fields), 'field')}", 2, style="bold"))
            for one in fields:
                yield from _describe_open_field(one)
    if not by_role:
        yield from (Line(), Line("Nothing is open."))


def _choose_role(project: Project, roles: Iterable[str], party: str) -> str:
    """The role that is meant: by its own name, its words, or the name of its party."""
    known = {name.casefold(): role for role in roles for name in (role, words(role), tell_owner(project, role))}
    known |= {name.rpartition(" (")[2].removesuffix(")"): role for name, role in known.items() if " (" in name}
    if party.casefold() not in known:
        hint = suggest(party, dict.fromkeys(known.values()))
        raise Refused(Problem(f"{party!r} answers for nothing that is open", hint))
    return known[party.casefold()]


def _describe_open_field(one: OpenField) -> Iterator[Line]:
    yield Line(f"  {one.path}: {one.example}", 6, f"{one.path}:", "bold")
    held = f"; holds up {join_marks(one.held, _MOST_HELD)}" if one.held else ""
    later = f"; stage {one.ring}" if one.ring not in ("", "optional") else ""
    yield Line(f"      {one.why}{held}{later}", 8)
