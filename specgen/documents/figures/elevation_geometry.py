"""A layout made ready for drawing: its exact lengths turned into floating point once, its marks shortened."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from itertools import pairwise
from typing import NamedTuple

from specgen.documents.figures.labels import LEAST_SIZE, measure
from specgen.laying_out.columns import PERIMETER, measure_columns
from specgen.model.layout import AESTHETIC, ElevationLayout, Panel

Places = list[tuple[float, Fraction]]
Line4 = tuple[float, float, float, float]
Ends = dict[float, Fraction]  # places along a side in meters, as numbers to reckon with and as they are


class Line(NamedTuple):
    """A run of a joint, in meters."""

    moving: bool
    x1: float
    y1: float
    x2: float
    y2: float


class Hole(NamedTuple):
    """An opening, in meters, with the mark of the joint around it; empty where there is none."""

    mark: str
    joint: str
    left: float
    bottom: float
    right: float
    top: float


class Piece(NamedTuple):
    """A panel by its bounding box, in meters, with its mark on this drawing."""

    mark: str
    left: float
    bottom: float
    right: float
    top: float
    panel: Panel | None  # where it is no rectangle

    @property
    def least_scale(self) -> float:
        """The millimeters on paper for a meter at which its mark stands in it, level or turned."""
        wide, high = self.right - self.left, self.top - self.bottom
        return max((measure(self.mark) + 1) / max(wide, high), (LEAST_SIZE + 0.6) / min(wide, high))


def _float(length: Fraction) -> float:
    """The nearest number; the fraction's own way to it takes four times as long."""
    over, under = length.as_integer_ratio()
    return over / under


class Day(NamedTuple):
    """The part of a wall that is sprayed on one day, in meters from the left."""

    start: float
    end: float


@dataclass(frozen=True)
class Geometry:
    """What is drawn of a layout."""

    layout: ElevationLayout
    day_area: Fraction | None = None  # square meters that are sprayed in a day
    open_sills: frozenset[str] = frozenset()  # openings below which the joint around them is left open

    def shorten(self, mark: str) -> str:
        """The mark of a panel or line on the drawing of its own elevation: `A3` of `E1-A3`."""
        return mark.removeprefix(f"{self.layout.elevation}-")

    @cached_property
    def uprights(self) -> dict[Fraction, str]:
        """Where upright joints cut the wall, from the left, with their marks."""
        return self._cuts(upright=True)

    @cached_property
    def levels(self) -> dict[Fraction, str]:
        """Where level joints cut the wall, from below, with their marks."""
        return self._cuts(upright=False)

    @cached_property
    def places(self) -> tuple[Places, Places]:
        """The places of upright and of level joints, each as a number to reckon with and as it is."""
        upright, level = ([(_float(place), place) for place in cuts] for cuts in (self.uprights, self.levels))
        return upright, level

    def _cuts(self, upright: bool) -> dict[Fraction, str]:
        layout = self.layout
        given = layout.vertical_lines if upright else layout.horizontal_lines
        found = {_float(place): (place, "") for place in given}
        for run, line in zip(layout.joints, self.lines, strict=True):
            at, other, exact = (line.x1, line.x2, run.x1) if upright else (line.y1, line.y2, run.y1)
            if at == other and run.kind != PERIMETER and not (at in found and found[at][1]):
                found[at] = (exact, self.shorten(run.mark))
        return dict(found[at] for at in sorted(found))

    def find_end(self, place: Fraction, edge: float, upright: bool = True) -> float:
        """Where the mark of a line points to: the end of the line below a sloped or stepped edge, else the edge."""
        if len(self.layout.edge) == 4:
            return edge
        return min(edge, (self._tops if upright else self._rights).get(float(place), edge))

    @cached_property
    def _tops(self) -> dict[float, float]:
        ends: dict[float, float] = {}
        for line in self.lines:
            if line.x1 == line.x2:
                ends[line.x1] = max(ends.get(line.x1, 0.0), line.y1, line.y2)
        return ends

    @cached_property
    def _rights(self) -> dict[float, float]:
        ends: dict[float, float] = {}
        for line in self.lines:
            if line.y1 == line.y2:
                ends[line.y1] = max(ends.get(line.y1, 0.0), line.x1, line.x2)
        return ends

    @cached_property
    def moving(self) -> tuple[str, ...]:
        """The marks of the movement joints, J2 before J10."""
        marks = {run.mark for run in self.layout.joints if run.kind != AESTHETIC}
        return tuple(sorted(marks, key=lambda mark: (len(mark), mark)))

    @cached_property
    def lines(self) -> tuple[Line, ...]:
        """The runs of all joints."""
        return tuple(
            Line(run.kind != AESTHETIC, _float(run.x1), _float(run.y1), _float(run.x2), _float(run.y2))
            for run in self.layout.joints
        )

    @cached_property
    def sealed(self) -> list[Line]:
        """The runs of all joints but those below some openings, where the joint around them is left open."""
        left_open = {(hole.left, hole.right, hole.bottom) for hole in self.openings if hole.mark in self.open_sills}
        runs = zip(self.layout.joints, self.lines, strict=True)
        return [
            line
            for run, line in runs
            if run.kind != PERIMETER
            or line.y1 != line.y2
            or (min(line.x1, line.x2), max(line.x1, line.x2), line.y1) not in left_open
        ]

    @cached_property
    def edges(self) -> list[Line4]:
        """The sides of the wall without an end that is a joint; its foot is broken at the openings that stand on it."""
        sides = []
        for (x1, y1), (x2, y2) in pairwise((*self.layout.edge, self.layout.edge[0])):
            ends = [x1, x2]
            if y1 == y2 and x1 < x2:
                standing = [(x, x + width) for _, x, y, width, _ in self.layout.openings if y == y1]
                cuts = sorted(span for span in standing if x1 <= span[0] and span[1] <= x2)
                ends = [x1, *(end for span in cuts for end in span), x2]
            pairs = zip(ends[::2], ends[1::2], strict=True)
            sides += [(_float(a), _float(y1), _float(b), _float(y2)) for a, b in pairs if a != b or y1 != y2]
        return [side for side in sides if not self._is_joint(side)]

    def _is_joint(self, side: Line4) -> bool:
        """Whether a movement joint runs along all of an upright side, so that its line stands for the edge."""
        x, y1, end, y2 = side
        return x == end and any(
            line.moving and line.x1 == line.x2 == x and line.y1 <= min(y1, y2) and line.y2 >= max(y1, y2)
            for line in self.lines
        )

    @cached_property
    def openings(self) -> tuple[Hole, ...]:
        """The openings."""
        ends: dict[tuple[float, float], str] = {}
        for run, line in zip(self.layout.joints, self.lines, strict=True):
            if run.kind == PERIMETER:
                ends[line.x1, line.y1] = ends[line.x2, line.y2] = self.shorten(run.mark)
        found = []
        for mark, x, y, width, height in self.layout.openings:
            left, bottom, right, top = map(_float, (x, y, x + width, y + height))
            joint = ends.get((left, bottom)) or ends.get((right, top)) or ""
            found.append(Hole(mark, joint, left, bottom, right, top))
        return tuple(found)

    @cached_property
    def jambs(self) -> list[Ends]:
        """For each opening its two jambs."""
        ends = zip(self.openings, self.layout.openings, strict=True)
        return [{hole.left: x, hole.right: x + width} for hole, (_, x, _, width, _) in ends]

    @cached_property
    def heads(self) -> list[Ends]:
        """For each opening its sill and its head."""
        ends = zip(self.openings, self.layout.openings, strict=True)
        return [{hole.bottom: y, hole.top: y + height} for hole, (_, _, y, _, height) in ends]

    @cached_property
    def panels(self) -> tuple[Piece, ...]:
        """The panels."""
        found = []
        for panel in self.layout.panels:
            left, bottom = _float(panel.x), _float(panel.y)
            right, top = left + _float(panel.width), bottom + _float(panel.height)
            whole = None if panel.is_rectangle else panel
            found.append(Piece(self.shorten(panel.mark), left, bottom, right, top, whole))
        return tuple(found)

    @cached_property
    def scales(self) -> tuple[float, ...]:
        """For each panel the scale its mark needs, in millimeters for a meter."""
        return tuple(piece.least_scale for piece in self.panels)

    @cached_property
    def days(self) -> list[Day]:
        """The days of the wall from the left, each with as many columns between upright joints as its area allows.

        None where no area of a day is known, or where one column is more than it.
        """
        if self.day_area is None:
            return []
        columns = measure_columns(self.layout)
        if max(column.area for column in columns) > self.day_area:
            return []
        starts, done = [0.0], Fraction(0)
        for column in columns:
            if done + column.area > self.day_area:
                starts.append(_float(column.left))
                done = Fraction(0)
            done += column.area
        return [Day(*span) for span in pairwise((*starts, _float(self.layout.width)))]
