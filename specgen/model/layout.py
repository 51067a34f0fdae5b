"""How an elevation is cut into panels by its joints; lengths in meters from the lower left, seen from outside."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Point = tuple[Fraction, Fraction]
# How the lines came about: those of the architect, or proposed, running through or stopping at openings.
Proposal = Literal["given", "through", "stopped"]
# The kind of a joint run that is an aesthetic joint; a movement joint has that of its entry under `joints`.
AESTHETIC = "aesthetic"


@dataclass(frozen=True, slots=True)
class Panel:
    """One piece between joints, edges and openings."""

    mark: str  # such as E1-A3
    outline: tuple[Point, ...]  # counterclockwise; sides level and plumb, save along a rake, where one slopes
    holes: tuple[tuple[Point, ...], ...]  # openings that lie wholly within it
    x: Fraction  # of its bounding box, as are y, width and height
    y: Fraction
    width: Fraction
    height: Fraction
    least_side: Fraction  # the narrowest leg anywhere in it, across either direction; along a rake halfway up
    net_area: Fraction  # square meters, openings taken out

    @property
    def is_rectangle(self) -> bool:
        """Whether nothing is cut out of it."""
        corners = self.outline
        sides = zip(corners, corners[1:] + corners[:1], strict=True)
        straight = all(x == before[0] or y == before[1] for before, (x, y) in sides)
        return len(corners) == 4 and straight and not self.holes


@dataclass(frozen=True, slots=True)
class JointRun:
    """One straight run of a joint."""

    mark: str  # that of the joint, or of the line, such as E1-V2
    kind: str  # AESTHETIC, or the kind of the movement joint
    x1: Fraction
    y1: Fraction
    x2: Fraction
    y2: Fraction

    @property
    def length(self) -> Fraction:
        """Meters; runs are level or plumb."""
        return abs(self.x2 - self.x1) + abs(self.y2 - self.y1)


@dataclass(frozen=True, slots=True)
class LayoutScore:
    """What a layout is judged by, the most important first; less is better."""

    over_limits: int  # panels past a panel limit
    slivers: int  # panels whose least side is under the limit
    missed: int  # floor lines, movement joints and aligned edges without a line
    joint_length: Fraction  # aesthetic joints, meters
    inequality: Fraction  # square meters: the largest panel less the smallest
    asymmetry: int  # vertical lines without their mirror image
    past_wish: int = 0  # panels past the target width or height; weighs less than `missed`, more than `joint_length`


@dataclass(frozen=True, slots=True)
class ElevationLayout:
    """An elevation, its panels and its joint runs."""

    elevation: str  # its mark
    width: Fraction
    height: Fraction
    edge: tuple[Point, ...]  # the outline of the elevation, counterclockwise
    openings: tuple[tuple[str, Fraction, Fraction, Fraction, Fraction], ...]  # mark, x, y, width, height
    vertical_lines: tuple[Fraction, ...]  # aesthetic joint lines, from the left
    horizontal_lines: tuple[Fraction, ...]  # and from below
    panels: tuple[Panel, ...]
    joints: tuple[JointRun, ...]
    proposal: Proposal
    score: LayoutScore
    notes: tuple[str, ...] = ()  # in words: what is traded off, the gap that is left, a demand that cannot be met

    def __str__(self) -> str:
        """How many panels there are, as the explanation of a rule says it."""
        return f"{len(self.panels)} panel{'s' * (len(self.panels) != 1)}"
