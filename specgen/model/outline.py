"""The outline of an elevation that is no rectangle: points, read and split into a lower and an upper edge."""

from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from specgen.quantities.format import format_quantity
from specgen.quantities.number import QuantityError
from specgen.quantities.parse import parse_quantity
from specgen.quantities.quantity import Quantity

Point = tuple[Fraction, Fraction]  # meters from the lower left


class OutlineError(ValueError):
    """An outline cannot be that of its elevation; `number` is that of the point, `hint` says what would be right."""

    def __init__(self, number: int, message: str, hint: str) -> None:
        super().__init__(message)
        self.number, self.message, self.hint = number, message, hint


class Stretch(NamedTuple):
    """A straight part of the lower or the upper edge, from left to right, in meters."""

    start: Point
    end: Point

    def at(self, x: Fraction) -> Fraction:
        """Its height at a place."""
        (x0, y0), (x1, y1) = self
        return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


class Outline(NamedTuple):
    """The lower and the upper edge, each from left to right."""

    bottom: tuple[Stretch, ...]
    top: tuple[Stretch, ...]

    @property
    def area(self) -> Fraction:
        """What lies between them, in square meters."""
        return sum((_area(s) for s in self.top), Fraction(0)) - sum((_area(s) for s in self.bottom), Fraction(0))

    def holds(self, left: Fraction, low: Fraction, right: Fraction, high: Fraction) -> bool:
        """Whether a box lies within it."""
        spans = [(s, max(left, s.start[0]), min(right, s.end[0])) for s in (*self.bottom, *self.top)]
        return all(
            (low >= max(s.at(a), s.at(b))) if s in self.bottom else (high <= min(s.at(a), s.at(b)))
            for s, a, b in spans
            if a < b
        )


def _area(stretch: Stretch) -> Fraction:
    (x0, y0), (x1, y1) = stretch
    return (x1 - x0) * (y0 + y1) / 2


def read_outline(points: tuple[str, ...], width: Quantity, height: Quantity) -> Outline:
    """The edges of an outline given as points `x, y` around an elevation of some size. Raises OutlineError."""
    corners = [read_point(number, text) for number, text in enumerate(points)]
    if len(corners) < 3:
        raise OutlineError(0, f"the outline has {len(corners)} points", "write the points around the wall, 3 or more")
    _check_size(corners, width, height)
    if _turn(corners) < 0:
        corners.reverse()
    first = min(range(len(corners)), key=lambda n: corners[n])
    around = corners[first:] + corners[: first + 1]
    last = max(range(len(around)), key=lambda n: (around[n][0], around[n][1]))
    bottom, top = _stretches(around[: last + 1]), _stretches(around[last:][::-1])
    if not bottom or not top or _is_crossed(bottom, top):
        raise OutlineError(0, "the outline crosses itself", "write the points in the order in which they lie around")
    return Outline(bottom, top)


def read_point(number: int, text: str) -> Point:
    """The point `x, y` of a text, the one of this number in its list. Raises OutlineError."""
    sides = text.split(",")
    hint = "write x and y from the lower left, such as 12 ft, 20 ft"
    if len(sides) != 2:
        raise OutlineError(number, f"{text!r} is no point", hint)
    try:
        x, y = (parse_quantity(side.strip(), "length", ("ft", "m")).amount for side in sides)
    except QuantityError as error:
        raise OutlineError(number, error.message, error.hint or hint) from None
    return x, y


def _check_size(corners: list[Point], width: Quantity, height: Quantity) -> None:
    """Raise OutlineError where the points do not reach from the lower left to the full width and height."""
    for axis, (side, most, named) in enumerate((("left", width, "wide"), ("lower", height, "high"))):
        places = [corner[axis] for corner in corners]
        if min(places) != 0:
            number = places.index(min(places))
            raise OutlineError(number, f"the outline does not begin at the {side} edge", "count from the lower left")
        if max(places) != most.amount:
            told = format_quantity(Quantity(max(places), "length", most.unit), most.unit)
            message = f"the outline is {told} {named}, the wall is {format_quantity(most, most.unit)} {named}"
            number = places.index(max(places))
            raise OutlineError(number, message, f"correct the point, or the {('width', 'height')[axis]} of the wall")


def _turn(corners: list[Point]) -> Fraction:
    """Twice the area within the corners; negative where they run clockwise."""
    ends = zip(corners, corners[1:] + corners[:1], strict=True)
    return sum(((x0 * y1 - x1 * y0) for (x0, y0), (x1, y1) in ends), Fraction(0))


def _stretches(corners: list[Point]) -> tuple[Stretch, ...]:
    """The parts of an edge from left to right; raises OutlineError where it turns back."""
    for start, end in pairwise(corners):
        if end[0] < start[0]:
            hint = "split it into elevations whose edge a plumb line meets once above and once below"
            raise OutlineError(0, "the outline turns back under or over itself", hint)
    return tuple(Stretch(start, end) for start, end in pairwise(corners) if start[0] < end[0])


def _is_crossed(bottom: tuple[Stretch, ...], top: tuple[Stretch, ...]) -> bool:
    """Whether the lower edge anywhere lies over the upper one, or the two are one."""
    places = sorted({point[0] for stretch in (*bottom, *top) for point in stretch})
    for left, right in pairwise(places):
        low = next(s for s in bottom if s.start[0] <= left and s.end[0] >= right)
        high = next(s for s in top if s.start[0] <= left and s.end[0] >= right)
        apart = (high.at(left) - low.at(left), high.at(right) - low.at(right))
        if min(apart) < 0 or max(apart) == 0:
            return True
    return False
