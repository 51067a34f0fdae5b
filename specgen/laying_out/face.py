"""An elevation in whole ticks: exact arithmetic on plain integers; the project stays in fractions of a meter.

One tick is the largest part of a meter of which every length of the elevation is a multiple.
"""

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from typing import NamedTuple

Length = int | Fraction  # ticks; a fraction only where a sloped edge is cut
Corner = tuple[Length, Length]

# Of the columns of panels. I and O are read as figures on a wall; H and V begin the marks of lines, J as a rule those
# of movement joints.
LETTERS = "ABCDEFGKLMNPQRSTUWXYZ"


class Opening(NamedTuple):
    """The box of an opening, edges in ticks."""

    mark: str
    left: int
    low: int
    right: int
    high: int


class Movement(NamedTuple):
    """A movement joint that runs right through."""

    mark: str
    kind: str
    at: int


class Around(NamedTuple):
    """A movement joint around openings."""

    mark: str
    kind: str
    openings: tuple[str, ...]


class Ledge(NamedTuple):
    """The box of a ledge on the wall, at which a groove stops; edges in ticks."""

    mark: str
    left: int
    low: int
    right: int
    high: int


class Limits(NamedTuple):
    """What a panel is held to, in ticks and square ticks."""

    max_width: int
    max_height: int
    max_area: int  # the largest whole number of square ticks within the limit
    least_side: int


class Edge(NamedTuple):
    """A stretch of the lower or the upper edge, from left to right."""

    left: int
    right: int
    at_left: int
    at_right: int

    def at(self, x: Length) -> Length:
        """Its height at a place."""
        if self.at_left == self.at_right:
            return self.at_left
        return self.at_left + Fraction((self.at_right - self.at_left) * (x - self.left), self.right - self.left)


class Roof(NamedTuple):
    """A roof that meets the wall along a line, and how far above it the board ends."""

    mark: str
    line: Edge
    clear: int

    def over(self, x: Length) -> Length:
        """The height at which the wall begins again above a place."""
        return self.line.at(x) + self.clear


@dataclass(frozen=True)
class Face:
    """An elevation: its size, its edge, its openings and the joints that always cut it; lengths in ticks."""

    mark: str
    scale: int  # ticks in a meter
    width: int
    height: int
    openings: tuple[Opening, ...]
    limits: Limits
    upright: tuple[Movement, ...] = ()  # movement joints that run up
    level: tuple[Movement, ...] = ()  # and along
    around: tuple[Around, ...] = ()
    floors: tuple[int, ...] = ()  # heights of the floor lines
    top: tuple[Edge, ...] = ()  # the upper edge; none for a rectangle
    bottom: tuple[Edge, ...] = ()
    roofs: tuple[Roof, ...] = ()  # that cut panels and grooves
    ledges: tuple[Ledge, ...] = ()  # at which grooves stop
    letters: str = LETTERS  # that name its columns
    _by_left: list[tuple[int, int]] = field(init=False, compare=False, repr=False)
    _widest: int = field(init=False, compare=False, repr=False)
    _meters: dict[Length, Fraction] = field(init=False, compare=False, repr=False, default_factory=dict)

    def __post_init__(self) -> None:
        """Sorts the openings from the left, so that those near a place are found at once."""
        by_left = sorted((one.left, number) for number, one in enumerate(self.openings))
        object.__setattr__(self, "_by_left", by_left)
        object.__setattr__(self, "_widest", max((one.right - one.left for one in self.openings), default=0))

    @property
    def is_rectangle(self) -> bool:
        """Whether its edge has no step and no slope."""
        return not self.top and not self.bottom

    @property
    def edge(self) -> tuple[Corner, ...]:
        """Its corners, counterclockwise from the lower left."""
        low = [corner for one in self.edges(self.bottom, 0) for corner in _ends(one)]
        high = [corner for one in self.edges(self.top, self.height) for corner in _ends(one)]
        return drop_straight(list(dict.fromkeys([*low, *reversed(high)])))

    def edges(self, edges: tuple[Edge, ...], level: int) -> tuple[Edge, ...]:
        """The stretches of an edge, one level one where none are given."""
        return edges or (Edge(0, self.width, level, level),)

    def near(self, left: Length, right: Length) -> list[Opening]:
        """The openings that touch or overlap a stretch from the left to the right."""
        first = bisect_left(self._by_left, (left - self._widest, -1))
        last = bisect_right(self._by_left, (right, len(self.openings)))
        found = (self.openings[number] for _, number in self._by_left[first:last])
        return [one for one in found if one.right >= left]

    def meters(self, ticks: Length) -> Fraction:
        """A length of this face in meters."""
        known = self._meters.get(ticks)
        if known is None:
            known = self._meters[ticks] = Fraction(ticks) / self.scale
        return known


def _ends(edge: Edge) -> tuple[Corner, Corner]:
    return (edge.left, edge.at_left), (edge.right, edge.at_right)


def find_scale(lengths: Iterable[Fraction]) -> int:
    """The ticks of a meter of which every one of some lengths in meters is a whole number."""
    return math.lcm(*(length.denominator for length in lengths))


def drop_straight(corners: list[Corner]) -> tuple[Corner, ...]:
    """The corners of a loop without those at which it does not turn."""
    turning = []
    for number, (x, y) in enumerate(corners):
        (x0, y0), (x1, y1) = corners[number - 1], corners[(number + 1) % len(corners)]
        if (x - x0) * (y1 - y) != (y - y0) * (x1 - x):
            turning.append((x, y))
    return tuple(turning)
