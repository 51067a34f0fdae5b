"""A plain box with openings measured fast, in whole ticks: the search asks for very many of them.

It measures the same as `cutting` and `measuring` do, without cells and outlines.
"""

from itertools import pairwise

Rectangle = tuple[int, int, int, int]  # left, low, right, high from the lower left of the box
Sides = tuple[int, int, int, int]  # width, height, area and least side of a piece


def measure_box(width: int, height: int, openings: list[Rectangle]) -> list[Sides]:
    """The pieces that openings leave of a box."""
    if not openings:
        return [(width, height, width * height, min(width, height))]
    return _measure_one(width, height, *openings[0]) if len(openings) == 1 else _measure_many(width, height, openings)


def _measure_one(width: int, height: int, left: int, low: int, right: int, high: int) -> list[Sides]:
    beside = [side for side in (left, width - right) if side > 0]
    over = [side for side in (low, height - high) if side > 0]
    if not beside:
        return [(width, side, width * side, min(width, side)) for side in over]
    if not over:
        return [(side, height, side * height, min(side, height)) for side in beside]
    return [(width, height, width * height - (right - left) * (high - low), min(beside + over))]


def _measure_many(width: int, height: int, openings: list[Rectangle]) -> list[Sides]:
    openings = sorted(openings, key=lambda one: one[1])
    places = sorted({0, width, *(side for one in openings for side in (one[0], one[2]))})
    slabs = [(a, b, _clear(height, openings, a, b)) for a, b in pairwise(places)]
    pieces = _join(slabs)
    levels = sorted({0, height, *(side for one in openings for side in (one[1], one[3]))})
    found: dict[int, list[int]] = {}
    for (left, right, clear), named in zip(slabs, pieces, strict=True):
        for (low, high), piece in zip(clear, named, strict=True):
            area = (right - left) * (high - low)
            sides = found.get(piece)
            if sides is None:
                found[piece] = [left, right, low, high, area, high - low]
            else:
                sides[1] = right
                sides[2:] = [min(sides[2], low), max(sides[3], high), sides[4] + area, min(sides[5], high - low)]
    _shorten(found, slabs, pieces, levels)
    return [(right - left, high - low, area, least) for left, right, low, high, area, least in found.values()]


Slab = tuple[int, int, list[tuple[int, int]]]


def _clear(height: int, openings: list[Rectangle], start: int, end: int) -> list[tuple[int, int]]:
    """The clear stretches of a slab from below."""
    clear, at = [], 0
    for left, low, right, high in openings:
        if left <= start and right >= end:
            if low > at:
                clear.append((at, low))
            at = max(at, high)
    if at < height:
        clear.append((at, height))
    return clear


def _join(slabs: list[Slab]) -> list[list[int]]:
    """The number of the piece that each clear stretch of each slab belongs to."""
    parent: list[int] = []
    named: list[list[int]] = []
    for number, (_, _, clear) in enumerate(slabs):
        names = []
        for low, high in clear:
            piece = len(parent)
            parent.append(piece)
            beside = zip(slabs[number - 1][2], named[-1], strict=True) if number else ()
            for (a, b), other in beside:
                if a < high and low < b:
                    parent[_root(parent, other)] = _root(parent, piece)
            names.append(piece)
        named.append(names)
    return [[_root(parent, piece) for piece in names] for names in named]


def _root(parent: list[int], piece: int) -> int:
    while parent[piece] != piece:
        piece = parent[piece]
    return piece


def _shorten(found: dict[int, list[int]], slabs: list[Slab], pieces: list[list[int]], levels: list[int]) -> None:
    """Take the least side of each piece down to its shortest level run."""
    for low, high in pairwise(levels):
        start, last = 0, -1
        for (left, _, clear), named in zip(slabs, pieces, strict=True):
            here = next((n for (a, b), n in zip(clear, named, strict=True) if a <= low and b >= high), -1)
            if here != last:
                if last >= 0:
                    found[last][5] = min(found[last][5], left - start)
                start, last = left, here
        if last >= 0:
            found[last][5] = min(found[last][5], slabs[-1][1] - start)
