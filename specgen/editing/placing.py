"""The places of new text in a file: behind which line a new key stands, and what goes into it."""

from collections.abc import Iterator
from typing import NamedTuple

from specgen.editing.lines import STEP, below, in_order, write_braces, write_flow_pair, write_lines, write_pair
from specgen.editing.outline import Spot, find_line_start, is_merge
from specgen.editing.planning import Fill, Growth
from specgen.editing.values import write_value


class Insert(NamedTuple):
    """Text put in place of that from `start` to `end`; of several at one place the deepest stands first."""

    start: int
    end: int
    depth: int
    text: str
    whole: bool = False  # whether it is lines of their own


def place_fill(source: str, fill: Fill) -> Insert:
    """A value put into its empty place."""
    value = write_value(fill.field, fill.addition.text, fill.flow)
    return _put_value(source, fill.key, fill.spot, value)


def _put_value(source: str, key: Spot, spot: Spot, value: str) -> Insert:
    start = spot.end - len(spot.text)
    before = source[key.end : start]
    if start < spot.end or before.endswith(" "):
        return Insert(start, spot.end, 0, value)
    return Insert(start, start, 0, f" {value}" if ":" in before else f": {value}")


class Placer:
    """Places new keys in the text of one file."""

    def __init__(self, source: str) -> None:
        self.source = source

    def place(self, growth: Growth) -> Iterator[Insert]:
        """The new text of one section."""
        spot, depth = growth.spot, len(growth.path)
        if spot.kind == "text":
            yield from self.fill_section(growth)
        elif spot.flow:
            yield from self.in_braces(growth)
        elif spot.kind == "list":
            yield self.behind(spot.end, depth, write_lines(growth.new, growth.node, spot.column))
        else:
            for name in in_order(growth.new, growth.node):
                lines = write_pair(name, growth.new[name], below(growth.node, name), spot.column)
                last = find_neighbor(growth, name)
                if last is None and self.opens_line(spot.pairs[0][0]):
                    yield self.before(spot.pairs[0][0], depth, lines)
                else:
                    yield self.behind((last or spot.pairs[0])[1].end, depth, lines)

    def fill_section(self, growth: Growth) -> Iterator[Insert]:
        """A section that was empty or `tbd`."""
        spot, key = growth.spot, growth.key
        assert key is not None
        if growth.flow:
            yield _put_value(self.source, key, spot, write_braces(growth.new, growth.node))
            return
        if spot.text:
            yield Insert(spot.end - len(spot.text), spot.end, 0, "")
        lines = write_lines(growth.new, growth.node, key.column + STEP)
        yield self.behind(spot.end, len(growth.path), lines)

    def in_braces(self, growth: Growth) -> Iterator[Insert]:
        """New pairs of a mapping in braces, or new entries of a list in brackets."""
        spot, depth = growth.spot, len(growth.path)
        for name in in_order(growth.new, growth.node):
            child = below(growth.node, name)
            if spot.kind == "list":
                text, last = write_braces(growth.new[name], child), spot.items[-1] if spot.items else None
            else:
                text, pair = write_flow_pair(name, growth.new[name], child), find_neighbor(growth, name)
                last = pair[1] if pair else None
            if last is not None:
                yield Insert(last.end, last.end, depth, f", {text}")
            else:
                yield Insert(spot.inner, spot.inner, depth, f"{text}, " if spot.pairs else text)

    def behind(self, index: int, depth: int, lines: Iterator[str]) -> Insert:
        """Lines behind the one in which a value ends."""
        start = self.end_of_line(index)
        return Insert(start, start, depth, "\n".join(lines), whole=True)

    def before(self, key: Spot, depth: int, lines: Iterator[str]) -> Insert:
        """Lines before a key and the comments above it."""
        start = find_line_start(self.source, key.start)
        return Insert(start, start, depth, "\n".join(lines), whole=True)

    def opens_line(self, key: Spot) -> bool:
        """Whether nothing stands before a key in its line."""
        return not self.source[find_line_start(self.source, key.start) : key.start].strip()

    def end_of_line(self, index: int) -> int:
        """The start of the line behind that of a place; the end of the text if it is the last one."""
        found = [end for end in (self.source.find("\n", index), self.source.find("\r", index)) if end >= 0]
        if not found:
            return len(self.source)
        end = min(found)
        return end + (2 if self.source.startswith("\r\n", end) else 1)


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
