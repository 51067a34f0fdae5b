"""Adds values to the source of a file, each at its place; every other byte stays as it is."""

import itertools
from collections.abc import Iterable, Sequence

from specgen.editing.edit import Added, Addition, Edit
from specgen.editing.outline import read_outline
from specgen.editing.placing import Insert, Placer, place_fill
from specgen.editing.planning import Plan, plan_edit
from specgen.editing.read_back import check_edited
from specgen.model.field import Schema
from specgen.model.problem import Refused
from specgen.reading.file_text import decode_source
from specgen.reading.positions import parse_text

_MARK = b"\xef\xbb\xbf"


def add_values(source: bytes, additions: Sequence[Addition], schema: Schema, shown: str) -> Edit:
    """The file with what could be added to it, named `shown` in messages.

    Raises Refused for a file that is no YAML mapping, for a path that is no field, and where the edited file would not
    be read as the old one with the new values.
    """
    before = parse_text(source, shown)
    if before.problems:
        raise Refused(*before.problems)
    text = decode_source(source, shown).text
    plan = plan_edit(before, read_outline(text), schema, additions)
    if not plan.taken:
        return Edit(source, (), tuple(plan.conflicts))
    edited = (_MARK if source.startswith(_MARK) else b"") + _insert(text, _place(text, plan)).encode()
    after = parse_text(edited, shown)
    remarks = check_edited(before, after, plan.taken, schema)
    added = tuple(Added(path, after.places[path].line, one.text) for path, one in plan.taken.items())
    return Edit(edited, added, tuple(plan.conflicts), remarks)


def _place(text: str, plan: Plan) -> list[Insert]:
    placer = Placer(text)
    grown = (placer.place(growth) for growth in plan.growths.values())
    return [*(place_fill(text, fill) for fill in plan.fills), *itertools.chain.from_iterable(grown)]


def _insert(text: str, inserts: Iterable[Insert]) -> str:
    """The text with all inserts, its own kind of line ends in theirs."""
    ending = next((end for end in ("\r\n", "\n", "\r") if end in text), "\n")
    done, parts = 0, []
    for insert in sorted(inserts, key=lambda one: (one.start, -one.depth)):
        parts += [text[done : insert.start], _end_lines(text, insert, ending)]
        done = insert.end
    return "".join([*parts, text[done:]])


def _end_lines(text: str, insert: Insert, ending: str) -> str:
    if not insert.whole:
        return insert.text
    lines = insert.text.replace("\n", ending)
    unended = insert.start == len(text) and not text.endswith(("\n", "\r"))
    return ending + lines if unended else lines + ending
