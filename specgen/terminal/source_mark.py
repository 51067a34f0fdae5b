"""The line of a file with a mark below the value at fault, as compilers show it."""

import re
from collections.abc import Callable, Iterator
from typing import NamedTuple

from specgen.model.finding import Place
from specgen.terminal.screen import Line

_TAB = " "
# A value in quotes, in brackets, or plain up to what ends it: a comma, a bracket, or a remark.
_KEY = re.compile(r"(?:\"[^\"]*\"|'[^']*'|[^\s:,{}\[\]]+)\s*:\s+")
_VALUE = re.compile(r"\"(?:[^\"\\]|\\.)*\"|'(?:[^']|'')*'|\[[^\]]*\]|[^,}\]#]+(?:(?<!\s)#[^,}\]#]*)*")
_PLAIN_VALUE = re.compile(r"\"(?:[^\"\\]|\\.)*\"|'(?:[^']|'')*'|\[[^\]]*\]|(?:(?!\s#).)+")
# So much of a long line stands before the mark.
_BEFORE = 24


class Span(NamedTuple):
    """Where in a line a value stands."""

    start: int
    end: int


def mark_place(place: Place, read: Callable[[str], list[str]], width: int) -> Iterator[Line]:
    """The line of a place and the mark below it; nothing where the line is not at hand."""
    rows = read(place.file) if place.line else []
    if not 0 < place.line <= len(rows):
        return
    row = rows[place.line - 1].replace("\t", _TAB)
    span = find_value(row, place.column - 1)
    number = f"{place.line:>9} | "
    text, span = _cut(row, span, max(width - len(number), _BEFORE + 8))
    yield Line(number + text, style="", whole=True)
    mark = "^" * max(span.end - span.start, 1)
    yield Line(f"{'':>9} | {' ' * span.start}{mark}", part=mark, style="bold", whole=True)


def find_value(row: str, at: int) -> Span:
    """The value of the key that stands at a column, counted from 0; the key itself where its value stands elsewhere."""
    key = _KEY.match(row, at)
    if key is None:  # an entry of a list, or a key with nothing behind it
        word = re.compile(r"[^\s:,{}\[\]]*").match(row, at)
        return Span(at, max(word.end() if word else at, at + 1))
    value = (_VALUE if _is_in_braces(row, at) else _PLAIN_VALUE).match(row, key.end())
    if value is None or row[key.end()] in "{&*|>#":
        return Span(at, at + len(row[at : key.end()].rstrip().rstrip(":").rstrip()))
    return Span(value.start(), value.start() + len(value[0].rstrip()))


def _is_in_braces(row: str, at: int) -> bool:
    """Whether a key stands within braces, opened in its line or above it: no other stands first and last there."""
    before, behind = row[:at], row[at:].partition(" #")[0].rstrip()
    others = before.strip().removeprefix("-").strip()
    return bool(others) or behind.endswith(",") or behind.count("}") > behind.count("{")


def _cut(row: str, span: Span, room: int) -> tuple[str, Span]:
    """The part of a long line around its mark."""
    if len(row) <= room:
        return row.rstrip(), span
    start = 0 if span.end < room - 3 else max(0, min(span.start - _BEFORE, len(row) - room))
    shown = f"{'...' if start else ''}{row[start + (3 if start else 0) : start + room]}"
    if start + room < len(row):
        shown = f"{shown[:-3]}..."
    return shown.rstrip(), Span(span.start - start, min(span.end - start, room))
