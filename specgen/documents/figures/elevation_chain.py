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
from specgen.documents.figures.elevation_geometry import Ends, Geometry, Hole
from specgen.documents.figures.elevation_paper import Scale, Window
from specgen.documents.figures.labels import CAPITAL, LEAST_SIZE, Label, center_label, measure
from specgen.documents.members import span_marks

_NEAR, _ROW = 6.5, 6.0  # from the wall to the chain, from there to the overall dimension
_DEEP = 6.5  # beside the length of a figure that stands across the chain
_PAST = 4.0  # from the overall dimension to what stands next
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


class Band(NamedTuple):
    """The openings that share a chain, and the places of their edges."""

    marks: list[str]
    edges: Ends


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
    first, last = float(low), float(high)
    joints = dict(geometry.places[not upright])
    chains = [joints, *(edges for _, edges in _list_bands(geometry, upright, window))]
    found = []
    for number, cuts in enumerate(chains):
        inside = sorted(at for at in cuts if first < at < last)
        if not number or any(at not in joints for at in inside):
            places = (low, *(cuts[at] for at in inside), high)
            found.append([_make_part(start, end, facts.length(end - start)) for start, end in pairwise(places)])
    return found


def tell_chains(geometry: Geometry) -> str:
    """What the chains show from the wall outward; empty where they show joints alone."""
    told = []
    for upright, where, name in ((True, "below", "jambs"), (False, "beside", "sills and heads")):
        joints = {0.0, float(_length(geometry, upright)), *dict(geometry.places[not upright])}
        bands = [marks for marks, edges in _list_bands(geometry, upright, None) if edges.keys() - joints]
        if bands:
            openings = (f"{name} of {span_marks(marks)}" for marks in bands)
            told.append(f"{where} the wall {', '.join(('joints', *openings, 'overall'))}")
    return f"Dimensions from the wall outward: {'; '.join(told)}" if told else ""


def _list_bands(geometry: Geometry, upright: bool, window: Window | None) -> list[Band]:
    """The openings that share a chain, by their marks, with their jambs; with sills and heads all share one.

    Openings whose jambs stand above those of others share their chain; where there are many, all do.
    """
    left, bottom, right, top = (-inf, -inf, inf, inf) if window is None else map(float, window[:4])
    shown = [
        (hole, edges)
        for hole, edges in zip(geometry.openings, geometry.jambs if upright else geometry.heads, strict=True)
        if hole.left < right and hole.right > left and hole.bottom < top and hole.top > bottom
    ]
    merged = list[Band]()
    for band in sorted(_part_rows(shown) if upright else [_gather(shown)], key=lambda band: -len(band.edges)):
        same = next((other for other in merged if band.edges.keys() <= other.edges.keys()), None)
        if same is None:
            merged.append(band)
        else:
            same.marks.extend(band.marks)
    return merged if len(merged) <= _MOST_CHAINS else [_gather(shown)]


def _part_rows(shown: list[tuple[Hole, Ends]]) -> list[Band]:
    """The openings in rows, each of those that stand beside each other."""
    rows: list[list[tuple[Hole, Ends]]] = []
    top = -inf
    for one in sorted(shown, key=lambda each: each[0].bottom):
        if one[0].bottom >= top:
            rows.append([])
        top = max(top, one[0].top)
        rows[-1].append(one)
    return [_gather(row) for row in rows]


def _gather(shown: list[tuple[Hole, Ends]]) -> Band:
    """The openings of one chain."""
    return Band([hole.mark for hole, _ in shown], {at: place for _, edges in shown for at, place in edges.items()})


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
