"""The places of new text in a file: behind which line a new key stands, and what goes into it."""

import re
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from specgen.editing.line_starts import LineStarts
from specgen.editing.lines import (
    STEP,
    below,
    in_order,
    write_braces,
    write_comment,
    write_in_braces,
    write_lines,
    write_pair,
)
from specgen.editing.outline import Spot, is_merge
from specgen.editing.planning import Fill, Growth, Section
from specgen.editing.values import write_value

_BLANK = re.compile(r"^[ \t]*$", re.MULTILINE)
# Behind all else that is put before a key stands the comment of that key.
_LAST = -1


class Insert(NamedTuple):
    """Text put in place of that from `start` to `end`; of several at one place the deepest stands first."""

    start: int
    end: int
    depth: int
    text: str
    whole: bool = False  # whether it is lines of their own


class Placer:
    """Places new text in the text of one file."""

    def __init__(self, source: str, lines: LineStarts) -> None:
        self.source, self.lines = source, lines
        self.spaced = _BLANK.search(source.rstrip()) is not None

    def fill(self, fill: Fill) -> Iterator[Insert]:
        """A value put into its empty place, and its comment above the key."""
        yield self.put_value(fill.key, fill.spot, write_value(fill.field, fill.addition.text, fill.flow))
        if fill.addition.comment and not fill.flow and self.opens_line(fill.key):
            yield self.above(fill.key, _LAST, write_comment(fill.addition.comment, fill.key.column))

    def put_value(self, key: Spot, spot: Spot, value: str) -> Insert:
        """A value in place of an empty one, behind a colon and a blank."""
        if spot.start < spot.end or key is spot:
            return Insert(spot.start, spot.end, 0, value)
        before = self.source[key.end : spot.start]
        blank = "" if before.endswith(" ") else " "
        return Insert(spot.start, spot.start, 0, f"{'' if ':' in before else ':'}{blank}{value}")

    def grow(self, growth: Growth) -> Iterator[Insert]:
        """The new keys of one section."""
        spot, depth = growth.spot, len(growth.path)
        if spot.kind == "text":
            yield from self.fill_section(growth)
        elif spot.flow:
            yield from self.in_braces(growth)
        elif spot.kind == "list":
            lines = write_lines(growth.new, growth.node, spot.column, self.step(growth))
            yield self.behind(spot.end, depth, lines, spot.column)
        else:
            for name in in_order(growth.new, growth.node):
                yield self.key(growth, name)

    def key(self, growth: Growth, name: str) -> Insert:
        """One new key of a section in lines."""
        spot, value = growth.spot, growth.new.keys[name]
        lines = [*write_pair(name, value, below(growth.node, name), spot.column, self.step(growth))]
        apart = [""] if not growth.path and (value.comment or self.spaced and isinstance(value, Section)) else []
        last, first = find_neighbor(growth, name), spot.pairs[0]
        if last is None and self.opens_line(first[0]):
            return self.above_comments(first[0], len(growth.path), [*lines, *apart])
        return self.behind((last or first)[1].end, len(growth.path), [*apart, *lines], spot.column)

    def step(self, growth: Growth) -> int:
        """How much deeper than its key a section stands here."""
        if growth.key is None or growth.spot.kind != "mapping" or growth.spot.column <= growth.key.column:
            return STEP
        return growth.spot.column - growth.key.column

    def fill_section(self, growth: Growth) -> Iterator[Insert]:
        """A section that was empty or `tbd`."""
        spot, key = growth.spot, growth.key
        assert key is not None
        if growth.flow:
            yield self.put_value(key, spot, write_braces(growth.new, growth.node))
            return
        if spot.text:
            yield Insert(spot.start, spot.end, 0, "")
        lines = write_lines(growth.new, growth.node, key.column + STEP)
        yield self.behind(spot.end, len(growth.path), lines, key.column + STEP)

    def in_braces(self, growth: Growth) -> Iterator[Insert]:
        """New pairs of a mapping in braces, or new entries of a list in brackets."""
        spot, depth = growth.spot, len(growth.path)
        listed = spot.kind == "list"
        first: list[str] = []
        for name in in_order(growth.new, growth.node):
            text = write_in_braces(name, growth.new.keys[name], below(growth.node, name), listed)
            pair = find_neighbor(growth, name)
            last = pair[1] if pair else spot.items[-1] if spot.items else None
            if last is not None:
                yield Insert(last.end, last.end, depth, f", {text}")
            else:
                first.append(text)
        if first:
            yield Insert(spot.inner, spot.inner, depth, ", ".join(first) + (", " if spot.pairs else ""))

    def behind(self, index: int, depth: int, lines: Iterable[str], column: int) -> Insert:
        """Lines at a column behind the one in which a value ends, and behind the comments that go on from it."""
        at_start = index > 0 and self.source[index - 1] in "\r\n"  # of a text in lines, with its last line end
        start = self.behind_inner(index if at_start else self.behind_comment(index), column)
        return Insert(start, start, depth, "\n".join(lines), whole=True)

    def behind_comment(self, index: int) -> int:
        """The start of the line behind a value; lines that only go on with the comment behind it are part of it."""
        start = self.lines.behind(index)
        rest = self.source[index:start]
        sign = rest.find("#")
        if sign < 0:
            return start
        column = index + sign - self.lines.start(index)
        while start < len(self.source):
            line = self.lines.line(start)
            if line[:column].strip() or not line.startswith("#", column):
                break
            start = self.lines.behind(start)
        return start

    def behind_inner(self, start: int, column: int) -> int:
        """The start of the line behind comments that stand further in than a column: they are about what is above."""
        at = start
        while at < len(self.source):
            line = self.lines.line(at)
            inner = line.lstrip(" ")
            if inner.strip() and not (inner.startswith("#") and len(line) - len(inner) > column):
                break
            at = self.lines.behind(at)
            start = at if inner.strip() else start
        return start

    def above(self, key: Spot, depth: int, lines: Iterable[str]) -> Insert:
        """Lines right above a key."""
        start = self.lines.start(key.start)
        return Insert(start, start, depth, "\n".join(lines), whole=True)

    def above_comments(self, key: Spot, depth: int, lines: Iterable[str]) -> Insert:
        """Lines above a key and its comment; what opens a file and stands right above a key is about the file."""
        start = self.lines.start(key.start)
        while (up := self.lines.above(start)) >= 0 and self.lines.line(up).lstrip().startswith("#"):
            start = up
        if self.lines.above(start) < 0:
            start = self.lines.start(key.start)
        return Insert(start, start, depth, "\n".join(lines), whole=True)

    def opens_line(self, key: Spot) -> bool:
        """Whether nothing stands before a key in its line."""
        return not self.source[self.lines.start(key.start) : key.start].strip()


def find_neighbor(growth: Growth, name: str) -> tuple[Spot, Spot] | None:
    """The pair behind which a new key stands: the last one that the schema has before it; None if it comes first."""
    pairs = growth.spot.pairs
    if growth.node.star is not None:
        return pairs[-1] if pairs else None
    ranks = {child: rank for rank, child in enumerate(growth.node.children)}
    earlier = [pair for pair in pairs if ranks.get(pair[0].text, len(ranks)) < ranks[name]]
    if earlier:
        return max(earlier, key=lambda pair: ranks[pair[0].text])
    return pairs[0] if pairs and is_merge(pairs[0][0]) else None
