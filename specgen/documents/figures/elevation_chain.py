"""The chain of dimensions from joint to joint along a side of the wall, and the overall dimension beyond it."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from specgen.documents.figures.elevation_canvas import Canvas, View
from specgen.documents.figures.elevation_facts import ElevationFacts
from specgen.documents.figures.elevation_geometry import Geometry
from specgen.documents.figures.elevation_paper import Scale
from specgen.documents.figures.labels import CAPITAL, LEAST_SIZE, Label, center_label, measure

_NEAR, _ROW = 8.0, 8.0  # from the wall to the chain, from there to the overall dimension
_DEEP = 6.5  # beside the length of a figure that stands across the chain
_PAST = 5.0  # from the overall dimension to what stands next
_TICK = 1.0  # half of the stroke that ends a dimension
_GAP = 1.5  # between the wall and an extension line, and of that past the dimension
_ABOVE = 1.0 + LEAST_SIZE * CAPITAL / 2  # from a dimension line to the middle of its figure
_SHIFTS = (0.0, 3.6, -3.6, 7.2, -7.2)


@dataclass(frozen=True, slots=True)
class Axis:
    """The side of a wall that a chain stands at: below it where the joints are upright, else to its left.

    Places `along` the side and distances `out` from the wall are millimeters on paper.
    """

    view: View
    upright: bool
    start: float = 0.0  # where the space for dimensions begins, out from the wall

    @property
    def span(self) -> tuple[float, float]:
        """From where to where the view shows the side, in meters."""
        view = self.view
        return (view.left, view.right) if self.upright else (view.bottom, view.top)

    def along(self, meters: Fraction) -> float:
        """A place along the side."""
        return (self.view.x if self.upright else self.view.y)(float(meters))

    def point(self, along: float, out: float) -> tuple[float, float]:
        """A point on paper."""
        return (along, self.view.y0 + self.start + out) if self.upright else (self.view.x0 - self.start - out, along)

    def line(self, canvas: Canvas, kind: str, start: tuple[float, float], end: tuple[float, float]) -> None:
        """Draw a line from one place along and out to another."""
        canvas.line(kind, *self.point(*start), *self.point(*end))

    def label(self, text: str, along: float, out: float, crosses: bool = False) -> Label:
        """A text about a point, along the side or across it."""
        return center_label(text, *self.point(along, out), turned=self.upright == crosses)


class Part(NamedTuple):
    """A dimension of the chain, and whether its figure is too wide to stand along it."""

    start: Fraction
    end: Fraction
    text: str
    crosses: bool


def find_depth(geometry: Geometry, facts: ElevationFacts, scale: Scale, upright: bool) -> float:
    """The room that the dimensions of a whole side take, out from the wall."""
    cuts, length = _side(geometry, upright)
    places = [Fraction(0), *cuts, length]
    return _NEAR + _row_depth(_list_parts(places, facts, scale.per_meter)) + _PAST


def _side(geometry: Geometry, upright: bool) -> tuple[list[Fraction], Fraction]:
    """Where joints cut a side of the wall, and how long it is."""
    layout = geometry.layout
    return ([*geometry.uprights], layout.width) if upright else ([*geometry.levels], layout.height)


def _row_depth(parts: list[Part]) -> float:
    return max([_ROW, *(measure(part.text) + _DEEP for part in parts if part.crosses)])


def _list_parts(places: list[Fraction], facts: ElevationFacts, per_meter: float) -> list[Part]:
    texts = [(start, end, facts.length(end - start)) for start, end in pairwise(places) if end > start]
    return [Part(*part, measure(part[2]) + 1.5 > float(part[1] - part[0]) * per_meter) for part in texts]


def draw_chain(canvas: Canvas, axis: Axis, geometry: Geometry, facts: ElevationFacts) -> None:
    """Draw the chain of what the view shows, and beyond it the overall dimension."""
    cuts, length = _side(geometry, axis.upright)
    low, high = (min((Fraction(0), *cuts, length), key=lambda place: abs(float(place) - end)) for end in axis.span)
    parts = _list_parts([low, *(place for place in cuts if low < place < high), high], facts, axis.view.per_meter)
    for part in parts:
        _draw_dimension(canvas, axis, part, 0.0, _NEAR)
    told = facts.length(high - low)
    whole = told if high - low == length else f"{told} of {facts.length(length)}"
    _draw_dimension(canvas, axis, Part(low, high, whole, False), _NEAR, _NEAR + _row_depth(parts))


def _draw_dimension(canvas: Canvas, axis: Axis, part: Part, first: float, out: float) -> None:
    """Draw a dimension with the extension lines that lead to it, and write its figure."""
    start, end = axis.along(part.start), axis.along(part.end)
    for place in (start, end):
        axis.line(canvas, "dimension", (place, first + _GAP), (place, out + _GAP))
        rise = _TICK if axis.upright else -_TICK
        axis.line(canvas, "tick", (place - rise, out + rise), (place + rise, out - rise))
    axis.line(canvas, "dimension", (start, out), (end, out))
    middle, beyond = (start + end) / 2, out + measure(part.text) / 2 + 1.5
    along = axis.label(part.text, middle, out - _ABOVE)
    across = [(by, axis.label(part.text, middle + by, beyond, crosses=True)) for by in _SHIFTS]
    label = canvas.place(_order(along, [label for _, label in across], part.crosses))
    if label is None:
        canvas.lost.append(f"dimension {part.text}")
    for by, choice in across:
        if by and label is choice:
            axis.line(canvas, "leader", (middle, out), (middle + by, out + 1.2))


def _order(along: Label, across: list[Label], crosses: bool) -> Iterator[Label]:
    if not crosses:
        yield along
    yield from across
