"""A layout made ready for drawing: its exact lengths turned into floating point once, its marks shortened."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import NamedTuple

from specgen.documents.figures.labels import LEAST_SIZE, measure
from specgen.model.layout import AESTHETIC, ElevationLayout, Panel

PERIMETER = "opening_perimeter"


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
    panel: Panel

    @property
    def least_scale(self) -> float:
        """The millimeters on paper for a meter at which its mark stands in it, level or turned."""
        wide, high = self.right - self.left, self.top - self.bottom
        return max((measure(self.mark) + 1) / max(wide, high), (LEAST_SIZE + 0.6) / min(wide, high))


@dataclass(frozen=True)
class Geometry:
    """What is drawn of a layout."""

    layout: ElevationLayout

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

    def _cuts(self, upright: bool) -> dict[Fraction, str]:
        layout = self.layout
        found = dict.fromkeys(layout.vertical_lines if upright else layout.horizontal_lines, "")
        for run in layout.joints:
            at, other = (run.x1, run.x2) if upright else (run.y1, run.y2)
            if at == other and run.kind != PERIMETER and not found.get(at):
                found[at] = self.shorten(run.mark)
        return dict(sorted(found.items()))

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
            Line(run.kind != AESTHETIC, float(run.x1), float(run.y1), float(run.x2), float(run.y2))
            for run in self.layout.joints
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
            left, bottom, right, top = (float(side) for side in (x, y, x + width, y + height))
            joint = ends.get((left, bottom)) or ends.get((right, top)) or ""
            found.append(Hole(mark, joint, left, bottom, right, top))
        return tuple(found)

    @cached_property
    def panels(self) -> tuple[Piece, ...]:
        """The panels."""
        return tuple(
            Piece(
                self.shorten(panel.mark),
                float(panel.x),
                float(panel.y),
                float(panel.x + panel.width),
                float(panel.y + panel.height),
                panel,
            )
            for panel in self.layout.panels
        )

    @cached_property
    def scales(self) -> tuple[float, ...]:
        """For each panel the scale its mark needs, in millimeters for a meter."""
        return tuple(piece.least_scale for piece in self.panels)
