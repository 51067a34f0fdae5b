"""Pieces put together across runs at which no joint is cut."""

from bisect import bisect_right
from collections.abc import Iterator
from typing import NamedTuple

from specgen.laying_out.cutting import Cell, merge_cells
from specgen.laying_out.face import Length
from specgen.laying_out.measuring import Shape, measure
from specgen.laying_out.runs import Run

Piece = tuple[tuple[int, int], list[Cell]]  # column and row from the lower left, and its cells
Side = tuple[bool, Length]  # an upright or a level line, and where


class _Contact(NamedTuple):
    """From where to where a piece lies at a line."""

    start: Length
    end: Length
    piece: int


class Pieces:
    """Pieces by number, and those that lie on either side of a line; pieces put together share a number."""

    def __init__(self, pieces: list[Piece]) -> None:
        self._pieces = pieces
        self._root = list(range(len(pieces)))
        self._members: dict[int, list[int]] = {number: [number] for number in range(len(pieces))}
        self._cells = {number: cells for number, (_, cells) in enumerate(pieces)}
        self._shapes: dict[int, Shape] = {}
        self._before: dict[Side, list[_Contact]] = {}
        self._behind: dict[Side, list[_Contact]] = {}
        for number, (_, cells) in enumerate(pieces):
            for cell in cells:
                self._place(cell, number)
        for contacts in (*self._before.values(), *self._behind.values()):
            contacts.sort()

    def _place(self, c: Cell, number: int) -> None:
        """Note at which lines a cell lies."""
        self._before.setdefault((True, c.right), []).append(_Contact(c.low_right, c.high_right, number))
        self._behind.setdefault((True, c.left), []).append(_Contact(c.low_left, c.high_left, number))
        along = _Contact(c.left, c.right, number)
        if c.high_left == c.high_right:
            self._before.setdefault((False, c.high_left), []).append(along)
        if c.low_left == c.low_right:
            self._behind.setdefault((False, c.low_left), []).append(along)

    def __len__(self) -> int:
        """How many there are now."""
        return len(self._members)

    def across(self, run: Run) -> list[set[int]]:
        """The pieces that would be one without a run, group by group."""
        groups: list[set[int]] = []
        for one, other in self.pairs(run):
            ends = {self._root[one], self._root[other]}
            if len(ends) > 1:
                joined = [group for group in groups if group & ends]
                groups = [group for group in groups if group not in joined]
                groups.append(ends.union(*joined))
        return groups

    def pairs(self, run: Run) -> list[tuple[int, int]]:
        """The pieces at either hand of a run, as they were at first."""
        side = (run.upright, run.at)
        behind = list(_within(self._behind.get(side, []), run))
        return [
            (one.piece, other.piece)
            for one in _within(self._before.get(side, []), run)
            for other in behind
            if max(one.start, other.start, run.start) < min(one.end, other.end, run.end)
        ]

    def root(self, piece: int) -> int:
        """The number of the piece that one is part of now."""
        return self._root[piece]

    def members(self, piece: int) -> list[int]:
        """The pieces that one was put together from."""
        return self._members[piece]

    def shape(self, number: int) -> Shape:
        """The shape of a piece."""
        known = self._shapes.get(number)
        if known is None:
            known = self._shapes[number] = measure(self._cells[number])
        return known

    def extent(self, group: set[int]) -> tuple[Length, Length]:
        """Width and height of the bounding box of some pieces."""
        boxes = [self._box(number) for number in group]
        return (
            max(right for *_, right, _ in boxes) - min(left for left, *_ in boxes),
            max(high for *_, high in boxes) - min(low for _, low, *_ in boxes),
        )

    def _box(self, number: int) -> tuple[Length, Length, Length, Length]:
        cells, shape = self._cells[number], self.shape(number)
        left, low = cells[0].left, min(min(cell.low_left, cell.low_right) for cell in cells)
        return left, low, left + shape.width, low + shape.height

    def cells(self, group: set[int]) -> list[Cell]:
        """The cells of some pieces as of one."""
        found = [cell for number in group for cell in self._cells[number]]
        return merge_cells(found) if len(group) > 1 else found

    def join(self, group: set[int]) -> None:
        """Make one of some pieces."""
        first, *others = sorted(group)
        self._cells[first] = self.cells(group)
        self._shapes.pop(first, None)
        for other in others:
            for number in self._members[other]:
                self._root[number] = first
            self._members[first] += self._members.pop(other)

    def shapes(self) -> list[Shape]:
        """The shapes of the pieces as they are now."""
        return [self.shape(number) for number in self._members]

    def all(self) -> list[Piece]:
        """The pieces as they are now, each at the column and row of its lower left part."""
        found = [(min(self._pieces[n][0] for n in members), self._cells[one]) for one, members in self._members.items()]
        return sorted(found, key=lambda piece: piece[0])


def join_across(pieces: list[Piece], left_out: frozenset[Run]) -> list[Piece]:
    """The pieces with those put together that lie on both sides of a run left out."""
    joined = Pieces(pieces)
    for run in sorted(left_out):
        for group in joined.across(run):
            joined.join(group)
    return joined.all()


def _within(contacts: list[_Contact], run: Run) -> Iterator[_Contact]:
    """The contacts that share a stretch with a run; those of one side of a line lie behind each other."""
    first = max(bisect_right(contacts, run.start, key=lambda contact: contact.start) - 1, 0)
    for number in range(first, len(contacts)):
        contact = contacts[number]
        if contact.start >= run.end:
            return
        if contact.end > run.start:
            yield contact
