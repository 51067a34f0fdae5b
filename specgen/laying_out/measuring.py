"""A piece measured: bounding box, area, the narrowest leg anywhere in it, its outline and holes."""

from collections.abc import Iterator
from fractions import Fraction
from functools import partial
from itertools import pairwise
from typing import NamedTuple

from specgen.laying_out.cutting import Cell, touch
from specgen.laying_out.face import Corner, Length, drop_straight


class Shape(NamedTuple):
    """What a piece is judged by, in ticks: the sides of its bounding box, its area, its narrowest leg."""

    width: Length
    height: Length
    area: Length
    least: Length


def measure(cells: list[Cell]) -> Shape:
    """The shape of a piece of some cells."""
    if len(cells) == 1 and cells[0].is_box:
        left, right, low, _, high, _ = cells[0]
        return Shape(right - left, high - low, (right - left) * (high - low), min(right - left, high - low))
    width = max(cell.right for cell in cells) - cells[0].left
    low = min(min(cell.low_left, cell.low_right) for cell in cells)
    high = max(max(cell.high_left, cell.high_right) for cell in cells)
    return Shape(width, high - low, _area(cells), find_least_side(cells))


def _area(cells: list[Cell]) -> Length:
    """The area; each cell by twice its mean height, so that it stays whole as long as it can."""
    return _halve(sum((c.right - c.left) * (c.high_left - c.low_left + c.high_right - c.low_right) for c in cells))


def find_least_side(cells: list[Cell]) -> Length:
    """The shortest run through a piece, level or plumb, from one of its sides to the next.

    Along a sloped edge, where every run ends in a point somewhere, that halfway between two corners is taken.
    """
    plumb = min(_halve(c.high_left - c.low_left + c.high_right - c.low_right) for c in cells)
    sides = {y for c in cells for y in (c.low_left, c.low_right, c.high_left, c.high_right)}
    return min(plumb, *(run for low, high in pairwise(sorted(sides)) for run in _level_runs(cells, low, high)))


def _halve(double: Length) -> Length:
    if isinstance(double, int) and double % 2 == 0:
        return double // 2
    half = Fraction(double, 2)
    return half.numerator if half.denominator == 1 else half


def _level_runs(cells: list[Cell], low: Length, high: Length) -> Iterator[Length]:
    """The lengths of the level runs through a piece halfway between two heights."""
    spans = sorted(span for cell in cells if (span := _span(cell, low, high)))
    start, end = spans[0] if spans else (0, 0)
    for left, right in spans[1:]:
        if left > end:
            yield end - start
            start = left
        end = right
    if spans:
        yield end - start


def _span(cell: Cell, low: Length, high: Length) -> tuple[Length, Length] | None:
    """From where to where a level line halfway between two heights runs in a cell."""
    if cell.is_box:
        return (cell.left, cell.right) if cell.low_left <= low and cell.high_left >= high else None
    y = Fraction(low + high) / 2
    inside = [cell.left, cell.right]
    for (at_left, at_right), sign in (((cell.low_left, cell.low_right), 1), ((cell.high_left, cell.high_right), -1)):
        over_left, over_right = sign * (y - at_left), sign * (y - at_right)
        if over_left < 0 and over_right < 0:
            return None
        if over_left < 0 or over_right < 0:
            crossing = cell.left + (cell.right - cell.left) * over_left / (over_left - over_right)
            inside = [max(inside[0], crossing), inside[1]] if over_left < 0 else [inside[0], min(inside[1], crossing)]
    return (inside[0], inside[1]) if inside[0] < inside[1] else None


def trace(cells: list[Cell]) -> tuple[tuple[Corner, ...], tuple[tuple[Corner, ...], ...]]:
    """The outline of a piece, counterclockwise from its lower left corner, and its holes."""
    if len(cells) == 1 and cells[0].is_box:
        left, right, low, _, high, _ = cells[0]
        return ((left, low), (right, low), (right, high), (left, high)), ()
    # A roof without clearance that ends within a piece leaves a slot without width, which is no hole.
    loops = [turning for loop in _link(list(_sides(cells))) if (turning := drop_straight(loop))]
    loops.sort(key=_signed_area, reverse=True)
    return _from_lower_left(loops[0]), tuple(_from_lower_left(loop) for loop in loops[1:])


def _sides(cells: list[Cell]) -> Iterator[tuple[Corner, Corner]]:
    """The sides of a piece, wall at the left hand."""
    by_left: dict[Length, list[Cell]] = {}
    by_right: dict[Length, list[Cell]] = {}
    for cell in cells:
        by_left.setdefault(cell.left, []).append(cell)
        by_right.setdefault(cell.right, []).append(cell)
    for c in cells:
        yield (c.left, c.low_left), (c.right, c.low_right)
        yield (c.right, c.high_right), (c.left, c.high_left)
        beyond = [(o.low_left, o.high_left) for o in by_left.get(c.right, ()) if touch(c, o)]
        for low, high in _free(c.low_right, c.high_right, beyond):
            yield (c.right, low), (c.right, high)
        before = [(o.low_right, o.high_right) for o in by_right.get(c.left, ()) if touch(o, c)]
        for low, high in _free(c.low_left, c.high_left, before):
            yield (c.left, high), (c.left, low)


def _free(low: Length, high: Length, taken: list[tuple[Length, Length]]) -> Iterator[tuple[Length, Length]]:
    """The stretches between two heights that others leave free."""
    for start, end in sorted(taken):
        if start > low:
            yield low, start
        low = max(low, end)
    if low < high:
        yield low, high


def _link(sides: list[tuple[Corner, Corner]]) -> Iterator[list[Corner]]:
    """Sides put one behind the other to loops; at a corner that two share each keeps to itself."""
    leaving: dict[Corner, list[Corner]] = {}
    for start, end in sides:
        if start != end:
            leaving.setdefault(start, []).append(end)
    while leaving:
        start = next(iter(leaving))
        loop, here = [start], leaving[start].pop()
        while here != start:
            ends = leaving[here]
            # At a corner that two loops share, the turn to the right keeps to the same opening.
            turn = min(ends, key=partial(_turn, loop[-1], here)) if len(ends) > 1 else ends[0]
            ends.remove(turn)
            loop.append(here)
            here = turn
        leaving = {corner: ends for corner, ends in leaving.items() if ends}
        yield loop


def _turn(a: Corner, b: Corner, c: Corner) -> Length:
    """How far to the left a way turns at its middle corner."""
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])


def _signed_area(loop: tuple[Corner, ...]) -> Length:
    return sum(loop[n - 1][0] * loop[n][1] - loop[n][0] * loop[n - 1][1] for n in range(len(loop)))


def _from_lower_left(loop: tuple[Corner, ...]) -> tuple[Corner, ...]:
    first = min(range(len(loop)), key=lambda n: (loop[n][1], loop[n][0]))
    return loop[first:] + loop[:first]
