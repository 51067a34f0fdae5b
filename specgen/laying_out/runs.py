"""Where joints run: a line is broken at openings and by the edge, and goes on over other joints."""

from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import NamedTuple

from specgen.laying_out.face import Around, Edge, Face, Length


class Run(NamedTuple):
    """A straight stretch of a joint; `upright` ones stand at `at` and run from `start` to `end` from below."""

    upright: bool
    at: int
    start: Length
    end: Length

    @property
    def length(self) -> Length:
        """In ticks."""
        return self.end - self.start

    @property
    def corners(self) -> tuple[Length, Length, Length, Length]:
        """Its two ends, as x and y twice."""
        return (self.at, self.start, self.at, self.end) if self.upright else (self.start, self.at, self.end, self.at)


def find_runs(face: Face, upright: bool, at: int) -> list[Run]:
    """The runs of a line: where there is wall on both sides, at the edge of the elevation on one."""
    taken: list[tuple[Length, Length]]
    if upright:
        whole = list(_wall_over(face, at))
        taken = [(o.low, o.high) for o in face.near(at, at)]
    else:
        whole = list(_wall_along(face, at))
        taken = [(o.left, o.right) for o in face.openings if o.low <= at <= o.high]
    return [Run(upright, at, *part) for start, end in whole for part in leave_out(start, end, taken)]


def _wall_over(face: Face, x: int) -> Iterator[tuple[Length, Length]]:
    """From where to where wall stands above a place, on both sides of it."""
    low = max(e.at(x) for e in face.edges(face.bottom, 0) if e.left <= x <= e.right)
    high = min(e.at(x) for e in face.edges(face.top, face.height) if e.left <= x <= e.right)
    if low < high:
        yield low, high


def _wall_along(face: Face, y: int) -> Iterator[tuple[Length, Length]]:
    """From where to where wall stands at a height, below and above it; at the lower and upper end on one side."""
    ends = y in (0, face.height)
    outside = [_past(edge, y, 1, ends) for edge in face.top] + [_past(edge, y, -1, ends) for edge in face.bottom]
    yield from leave_out(0, face.width, [stretch for stretch in outside if stretch])


def _past(edge: Edge, y: int, sign: int, ends: bool) -> tuple[Length, Length] | None:
    """The stretch over which a height lies on an edge or beyond it; `sign` is 1 for an upper edge."""
    left, right = sign * (edge.at_left - y), sign * (edge.at_right - y)
    if left > 0 and right > 0 or (ends and left >= 0 and right >= 0):
        return None
    if left <= 0 and right <= 0:
        return edge.left, edge.right
    crossing = edge.left + Fraction((edge.right - edge.left) * left) / (left - right)
    return (edge.left, crossing) if left <= 0 else (crossing, edge.right)


def leave_out(start: Length, end: Length, taken: Iterable[tuple[Length, Length]]) -> Iterator[tuple[Length, Length]]:
    """The stretches between two places that others leave."""
    for left, right in sorted(taken):
        if left > start:
            yield start, min(left, end)
        start = max(start, right)
        if start >= end:
            return
    if start < end:
        yield start, end


def runs_around(face: Face, joint: Around) -> Iterator[Run]:
    """The runs of a joint around the openings it serves: each side that has wall beyond it."""
    for one in (opening for opening in face.openings if opening.mark in joint.openings):
        beside = [o for o in face.near(one.left, one.right) if o is not one]
        for x in (one.left, one.right):
            if 0 < x < face.width:
                yield from _side(
                    True, x, one.low, one.high, [(o.low, o.high) for o in beside if x in (o.left, o.right)]
                )
        for y in (one.low, one.high):
            if 0 < y < face.height:
                yield from _side(
                    False, y, one.left, one.right, [(o.left, o.right) for o in beside if y in (o.low, o.high)]
                )


def _side(upright: bool, at: int, start: int, end: int, taken: Iterable[tuple[Length, Length]]) -> Iterator[Run]:
    yield from (Run(upright, at, *part) for part in leave_out(start, end, taken))
