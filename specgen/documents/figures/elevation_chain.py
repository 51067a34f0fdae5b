"""The dimensions along a side of the wall: from joint to joint, then of openings off the joints, then overall.

Jambs of openings that stand beside each other share a chain; those above or below have one of their own.
"""

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import inf
from typing import NamedTuple

from specgen.documents.figures.elevation_canvas import Canvas, View
from specgen.documents.figures.elevation_facts import ElevationFacts
from specgen.documents.figures.elevation_geometry import Geometry
from specgen.documents.figures.elevation_paper import Scale, Window
from specgen.documents.figures.labels import CAPITAL, LEAST_SIZE, Label, center_label, measure
from specgen.documents.members import span_marks

_NEAR, _ROW = 8.0, 8.0  # from the wall to the chain, from there to the overall dimension
_DEEP = 6.5  # beside the length of a figure that stands across the chain
_PAST = 5.0  # from the overall dimension to what stands next
_TICK = 1.0  # half of the stroke that ends a dimension
_GAP = 1.5  # between the wall and an extension line, and of that past the dimension
_ABOVE = 1.0 + LEAST_SIZE * CAPITAL / 2  # from a dimension line to the middle of its figure
_MOST_CHAINS = 3  # of openings
_SHIFTS = (0.0, 3.6, -3.6, 7.2, -7.2)

Span = tuple[Fraction, Fraction]  # from where to where along a side, in meters


@dataclass(frozen=True, slots=True)
class Axis:
    """The side of a wall that a chain stands at: below it where the joints are upright, else to its left.

    Places `along` the side and distances `out` from the wall are millimeters on paper.
    """

    view: View
    upright: bool
    start: float = 0.0  # where the space for dimensions begins, out from the wall

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
    """A dimension of the chain, its figure, and how wide that is on paper."""

    start: Fraction
    end: Fraction
    text: str
    wide: float

    def crosses(self, per_meter: float) -> bool:
        """Whether its figure is too wide to stand along it at a scale."""
        return self.wide + 1.5 > float(self.end - self.start) * per_meter


def list_chains(
    geometry: Geometry, facts: ElevationFacts, upright: bool, window: Window | None = None
) -> list[list[Part]]:
    """The chains along a side of the wall, or of the part that a sheet shows, from the wall outward.

    The first runs from joint to joint. Others give jambs, or sills and heads, where one of them is on no joint.
    """
    low, high = (Fraction(0), _length(geometry, upright)) if window is None else _span(window, upright)
    joints = {place for place in (geometry.uprights if upright else geometry.levels) if low < place < high}
    bands = [{edge for edge in edges if low < edge < high} for _, edges in _list_bands(geometry, upright, window)]
    chains = [joints, *(edges for edges in bands if edges - joints)]
    return [
        [_make_part(start, end, facts.length(end - start)) for start, end in pairwise((low, *sorted(cuts), high))]
        for cuts in chains
    ]


def tell_chains(geometry: Geometry) -> str:
    """What the chains show from the wall outward; empty where they show joints alone."""
    told = []
    for upright, where, name in ((True, "below", "jambs"), (False, "beside", "sills and heads")):
        joints = set(geometry.uprights if upright else geometry.levels) | {Fraction(0), _length(geometry, upright)}
        bands = [marks for marks, edges in _list_bands(geometry, upright, None) if edges - joints]
        if bands:
            openings = (f"{name} of {span_marks(marks)}" for marks in bands)
            told.append(f"{where} the wall {', '.join(('joints', *openings, 'overall'))}")
    return f"Dimensions from the wall outward: {'; '.join(told)}" if told else ""


def _list_bands(geometry: Geometry, upright: bool, window: Window | None) -> list[tuple[list[str], set[Fraction]]]:
    """The openings that share a chain, by their marks, with their jambs; with sills and heads all share one.

    Openings whose jambs stand above those of others share their chain; where there are many, all do.
    """
    shown = _list_shown(geometry, window)
    if not upright:
        return [([mark for mark, *_ in shown], {edge for _, _, y, _, height in shown for edge in (y, y + height)})]
    bands: list[tuple[list[str], set[Fraction]]] = []
    top = Fraction(-1)
    for mark, x, y, width, height in sorted(shown, key=lambda one: one[2]):
        if y >= top:
            bands.append(([], set()))
        top = max(top, y + height)
        bands[-1][0].append(mark)
        bands[-1][1].update((x, x + width))
    merged: list[tuple[list[str], set[Fraction]]] = []
    for marks, edges in sorted(bands, key=lambda band: -len(band[1])):
        same = next((other for other in merged if edges <= other[1]), None)
        if same:
            same[0].extend(marks)
        else:
            merged.append((marks, edges))
    if len(merged) > _MOST_CHAINS:
        return [([mark for mark, *_ in shown], {edge for _, edges in merged for edge in edges})]
    return merged


def _list_shown(geometry: Geometry, window: Window | None) -> list[tuple[str, Fraction, Fraction, Fraction, Fraction]]:
    """The openings that a sheet shows."""
    left, bottom, right, top = (-inf, -inf, inf, inf) if window is None else map(float, window[:4])
    return [
        opening
        for opening, hole in zip(geometry.layout.openings, geometry.openings, strict=True)
        if hole.left < right and hole.right > left and hole.bottom < top and hole.top > bottom
    ]


def _span(window: Window, upright: bool) -> Span:
    return (window.left, window.right) if upright else (window.bottom, window.top)


def _make_part(start: Fraction, end: Fraction, text: str) -> Part:
    return Part(start, end, text, measure(text))


def _length(geometry: Geometry, upright: bool) -> Fraction:
    return geometry.layout.width if upright else geometry.layout.height


def find_depth(chains: list[list[Part]], scale: Scale) -> float:
    """The room that the dimensions of a side take at a scale, out from the wall."""
    return _NEAR + sum(_row_depth(parts, scale.per_meter) for parts in chains) + _PAST


def _row_depth(parts: list[Part], per_meter: float) -> float:
    return max([_ROW, *(part.wide + _DEEP for part in parts if part.crosses(per_meter))])


def draw_chains(canvas: Canvas, axis: Axis, window: Window, geometry: Geometry, facts: ElevationFacts) -> None:
    """Draw the chains of what a sheet shows, and beyond them the overall dimension."""
    per_meter = axis.view.per_meter
    near, out = 0.0, _NEAR
    for parts in list_chains(geometry, facts, axis.upright, window):
        for part in parts:
            _draw_dimension(canvas, axis, part, (near, out), part.crosses(per_meter))
        near, out = out, out + _row_depth(parts, per_meter)
    (low, high), length = _span(window, axis.upright), _length(geometry, axis.upright)
    told = facts.length(high - low)
    whole = told if high - low == length else f"{told} of {facts.length(length)}"
    _draw_dimension(canvas, axis, _make_part(low, high, whole), (near, out), crosses=False)


def _draw_dimension(canvas: Canvas, axis: Axis, part: Part, rows: tuple[float, float], crosses: bool) -> None:
    """Draw a dimension in the second of two rows, with extension lines from the first, and write its figure."""
    first, out = rows
    start, end = axis.along(part.start), axis.along(part.end)
    for place in (start, end):
        axis.line(canvas, "dimension", (place, first + _GAP), (place, out + _GAP))
        rise = _TICK if axis.upright else -_TICK
        axis.line(canvas, "tick", (place - rise, out + rise), (place + rise, out - rise))
    axis.line(canvas, "dimension", (start, out), (end, out))
    middle, beyond = (start + end) / 2, out + part.wide / 2 + 1.5
    along = () if crosses else (axis.label(part.text, middle, out - _ABOVE),)
    across = {by: axis.label(part.text, middle + by, beyond, crosses=True) for by in _SHIFTS}
    label = canvas.place((*along, *across.values()))
    if label is None:
        canvas.lost.append(f"dimension {part.text}")
    for by, choice in across.items():
        if by and label is choice:
            axis.line(canvas, "leader", (middle, out), (middle + by, out + 1.2))
