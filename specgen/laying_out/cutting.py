"""A box of an elevation cut into pieces: what the openings and the edge leave of it, measured.

A box is divided into slabs at every upright edge in it; the stretches of wall in each slab are its cells, and cells
that touch along a stretch belong to one piece.
"""

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from specgen.laying_out.face import Corner, Edge, Face, Length, Opening

Box = tuple[int, int, int, int]  # left, low, right, high


class Cell(NamedTuple):
    """A stretch of wall between two upright sides; its lower and its upper side may slope."""

    left: Length
    right: Length
    low_left: Length
    low_right: Length
    high_left: Length
    high_right: Length

    @property
    def is_box(self) -> bool:
        """Whether neither its lower nor its upper side slopes."""
        return self.low_left == self.low_right and self.high_left == self.high_right


def cut_box(face: Face, box: Box, near: list[Opening] | None = None) -> list[list[Cell]]:
    """The pieces of a box, each as its cells from the left; `near` are the openings that may touch it."""
    left, low, right, high = box
    found = face.near(left, right) if near is None else near
    within = [o for o in found if o.left < right and o.right > left and o.low < high and o.high > low]
    if not within and face.is_rectangle:
        return [[Cell(left, right, low, low, high, high)]]
    slabs = []
    for start, end in pairwise(_places(face, box, within)):
        slabs.append(list(_cells(face, box, within, start, end)))
    return join_slabs(slabs)


def _places(face: Face, box: Box, within: list[Opening]) -> list[Length]:
    """Where slabs begin and end: at upright edges, and where a sloped edge crosses the box."""
    left, low, right, high = box
    places: set[Length] = {left, right}
    places.update(side for one in within for side in (one.left, one.right))
    for edge in (*face.top, *face.bottom):
        places.update((edge.left, edge.right))
        if edge.at_left != edge.at_right:
            places.update(x for y in (low, high) if (x := _meet(edge, y)) is not None)
    return sorted(place for place in places if left <= place <= right)


def _meet(edge: Edge, y: int) -> Fraction | None:
    """Where a sloped edge passes a height."""
    if not min(edge.at_left, edge.at_right) < y < max(edge.at_left, edge.at_right):
        return None
    return edge.left + Fraction((y - edge.at_left) * (edge.right - edge.left), edge.at_right - edge.at_left)


def _cells(face: Face, box: Box, within: list[Opening], start: Length, end: Length) -> Iterator[Cell]:
    """The cells of a slab from below."""
    _, low, _, high = box
    if face.is_rectangle:
        yield from _level_cells(within, (start, low, end, high))
        return
    below = _edge_over(face.edges(face.bottom, 0), start, end)
    above = _edge_over(face.edges(face.top, face.height), start, end)
    foot = (max(low, below.at(start)), max(low, below.at(end)))
    head = (min(high, above.at(start)), min(high, above.at(end)))
    for one in sorted((o for o in within if o.left <= start and o.right >= end), key=lambda o: o.low):
        yield from make_cell(start, end, foot, (min(head[0], one.low), min(head[1], one.low)))
        foot = (max(foot[0], one.high), max(foot[1], one.high))
    yield from make_cell(start, end, foot, head)


def _level_cells(within: list[Opening], slab: tuple[Length, int, Length, int]) -> Iterator[Cell]:
    """The cells of a slab that no edge of the elevation crosses."""
    start, foot, end, head = slab
    for one in sorted((o for o in within if o.left <= start and o.right >= end), key=lambda o: o.low):
        if one.low > foot:
            yield Cell(start, end, foot, foot, one.low, one.low)
        foot = max(foot, one.high)
    if head > foot:
        yield Cell(start, end, foot, foot, head, head)


def _edge_over(edges: tuple[Edge, ...], start: Length, end: Length) -> Edge:
    return next(edge for edge in edges if edge.left <= start and edge.right >= end)


def make_cell(start: Length, end: Length, foot: Corner, head: Corner) -> Iterator[Cell]:
    """The cell between two sides, if there is anything between them."""
    if head[0] >= foot[0] and head[1] >= foot[1] and head != foot:
        yield Cell(start, end, *foot, *head)


def join_slabs(slabs: list[list[Cell]]) -> list[list[Cell]]:
    """Cells gathered into pieces: those of neighboring slabs that touch along a stretch."""
    pieces: list[list[Cell]] = []
    piece_of: dict[Cell, list[Cell]] = {}
    for number, slab in enumerate(slabs):
        for cell in slab:
            touching = [c for c in slabs[number - 1] if touch(c, cell)] if number else []
            joined = {id(piece_of[c]): piece_of[c] for c in touching}
            piece = next(iter(joined.values()), [])
            for other in list(joined.values())[1:]:
                piece += other
                piece_of.update(dict.fromkeys(other, piece))
                pieces = [p for p in pieces if p is not other]
            if not joined:
                pieces.append(piece)
            piece.append(cell)
            piece_of[cell] = piece
    return [sorted(piece) for piece in pieces]


def touch(one: Cell, other: Cell) -> bool:
    """Whether the right side of a cell and the left side of another share a stretch."""
    return one.low_right < other.high_left and other.low_left < one.high_right


def merge_cells(cells: list[Cell]) -> list[Cell]:
    """The cells of a piece made of several, each as long from below to above as it can be."""
    places = sorted({side for cell in cells for side in (cell.left, cell.right)})
    merged: list[Cell] = []
    for start, end in pairwise(places):
        parts = sorted(
            (cut_part(cell, start, end) for cell in cells if cell.left <= start and cell.right >= end),
            key=lambda part: (part.low_left, part.low_right),
        )
        for part in parts:
            last = merged[-1] if merged and merged[-1].left == start else None
            if last and (last.high_left, last.high_right) == (part.low_left, part.low_right):
                merged[-1] = last._replace(high_left=part.high_left, high_right=part.high_right)
            else:
                merged.append(part)
    return merged


def cut_part(cell: Cell, start: Length, end: Length) -> Cell:
    """What of a cell lies between two places in it."""
    if cell.is_box:
        return cell._replace(left=start, right=end)

    def between(a: Length, b: Length, x: Length) -> Length:
        return a if a == b else a + Fraction((b - a) * (x - cell.left)) / (cell.right - cell.left)

    low, high = (cell.low_left, cell.low_right), (cell.high_left, cell.high_right)
    return Cell(start, end, between(*low, start), between(*low, end), between(*high, start), between(*high, end))
