"""The narrowest leg of a layout: what it lies between, and the least shift of one line or opening that avoids it."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from specgen.laying_out.assembling import assemble
from specgen.laying_out.face import Face
from specgen.laying_out.scoring import Wishes
from specgen.model.layout import ElevationLayout, Panel


class Bound(NamedTuple):
    """One side of a leg: where it lies, and the line or opening that can be shifted, by its mark."""

    at: Fraction  # meters
    name: str
    line: str = ""
    opening: str = ""


class Leg(NamedTuple):
    """The narrowest part of a panel, measured across."""

    panel: Panel
    upright: bool  # whether it lies between upright sides
    low: Bound
    high: Bound

    @property
    def width(self) -> Fraction:
        """Meters."""
        return self.high.at - self.low.at


class Shift(NamedTuple):
    """A line or an opening by its mark, and how far it goes: positive to the right or up; meters."""

    mark: str
    upright: bool
    by: Fraction


class _Side(NamedTuple):
    at: Fraction
    start: Fraction
    end: Fraction


def find_leg(layout: ElevationLayout, panel: Panel) -> Leg | None:
    """The leg that makes a panel as narrow as it is; none along a rake, where the side is measured halfway up."""
    for upright in (True, False):
        lows, highs = _sides(panel, upright)
        for low in lows:
            for high in highs:
                apart = high.at - low.at == panel.least_side
                if apart and max(low.start, high.start) < min(low.end, high.end):
                    return Leg(panel, upright, *(_bound(layout, upright, side) for side in (low, high)))
    return None


def _sides(panel: Panel, upright: bool) -> tuple[list[_Side], list[_Side]]:
    """The sides of one direction with the panel to the right of them or above, and those with it on the other hand."""
    lows: list[_Side] = []
    highs: list[_Side] = []
    for loop in (panel.outline, *panel.holes):
        for start, end in zip(loop, loop[1:] + loop[:1], strict=True):
            (at, a), (other, b) = (start, end) if upright else (start[::-1], end[::-1])
            if at == other:
                # The panel is to the left of a loop that runs counterclockwise.
                (highs if (b > a) == upright else lows).append(_Side(at, min(a, b), max(a, b)))
    return lows, highs


def _bound(layout: ElevationLayout, upright: bool, side: _Side) -> Bound:
    names = ("left jamb", "right jamb") if upright else ("sill", "head")
    for mark, x, y, width, height in layout.openings:
        first, size, along, length = (x, width, y, height) if upright else (y, height, x, width)
        if along < side.end and along + length > side.start:
            for at, name in zip((first, first + size), names, strict=True):
                if at == side.at:
                    return Bound(at, f"the {name} of {mark}", opening=mark)
    for joint in layout.joints:
        if _lies_at(joint.x1, joint.x2, joint.y1, joint.y2, upright) == side.at:
            is_line = joint.mark.startswith(f"{layout.elevation}-")
            return Bound(side.at, joint.mark, line=joint.mark if is_line else "")
    return Bound(side.at, "the edge of the wall")


def _lies_at(x1: Fraction, x2: Fraction, y1: Fraction, y2: Fraction, upright: bool) -> Fraction | None:
    """Where a joint lies if it runs in one direction."""
    return x1 if upright and x1 == x2 else y1 if not upright and y1 == y2 else None


def find_shift(face: Face, wishes: Wishes, layout: ElevationLayout, leg: Leg, *, level_held: bool) -> Shift | None:
    """The least shift that does away with a leg while no panel more is past a limit or too narrow; none if there is
    none. `level_held` lines stay, as they meet those of another elevation."""
    openings = {one.mark for one in face.openings}
    for shift in sorted(_shifts(face, leg), key=lambda one: (abs(one.by), one.mark in openings)):
        if level_held and not shift.upright and shift.mark not in openings:
            continue
        changed = _change(face, wishes, layout, shift)
        if changed is not None and _mends(layout, changed, leg):
            return shift
    return None


def _mends(before: ElevationLayout, after: ElevationLayout, leg: Leg) -> bool:
    """Whether fewer panels are as narrow as a leg, none more is narrow or past a limit, and as much wall stands."""
    faults = [
        (
            one.score.over_limits,
            one.score.slivers,
            sum(panel.least_side <= leg.width for panel in one.panels) + (one is after),
        )
        for one in (before, after)
    ]
    fewer = all(new <= old for old, new in zip(*faults, strict=True))
    walls = [sum(panel.net_area for panel in one.panels) for one in (before, after)]
    return fewer and walls[0] == walls[1]


def _shifts(face: Face, leg: Leg) -> Iterator[Shift]:
    """What can be shifted: onto the other side of the leg, or as far from it as the least side."""
    lacks = face.meters(face.limits.least_side) - leg.width
    for bound, sign in ((leg.low, 1), (leg.high, -1)):
        mark = bound.line or bound.opening
        if mark:
            yield Shift(mark, leg.upright, sign * leg.width)
            yield Shift(mark, leg.upright, -sign * lacks)


def _change(face: Face, wishes: Wishes, layout: ElevationLayout, shift: Shift) -> ElevationLayout | None:
    """The layout with one line or opening elsewhere; none where that is no place for it."""
    by = shift.by * face.scale
    if by.denominator != 1:
        return None
    lines = {True: list(layout.vertical_lines), False: list(layout.horizontal_lines)}
    if any(one.mark == shift.mark for one in face.openings):
        moved = _move_opening(face, shift.mark, shift.upright, by.numerator)
        if moved is None:
            return None
        face = moved
    else:
        # The number of a line is its place among them.
        lines[shift.upright][int(shift.mark.rsplit("-", 1)[1][1:]) - 1] += shift.by
    ends = ((True, face.width), (False, face.height))
    found = (sorted({int(at * face.scale) for at in lines[way]}) for way, _ in ends)
    upright, level = (tuple(at for at in each if 0 < at < end) for each, (_, end) in zip(found, ends, strict=True))
    return assemble(face, upright, level, wishes)


def _move_opening(face: Face, mark: str, upright: bool, by: int) -> Face | None:
    """The face with one opening elsewhere; none where that is off the wall or on another."""
    one = next(one for one in face.openings if one.mark == mark)
    right, up = (by, 0) if upright else (0, by)
    moved = one._replace(left=one.left + right, right=one.right + right, low=one.low + up, high=one.high + up)
    others = [other for other in face.openings if other is not one]
    inside = moved.left >= 0 and moved.low >= 0 and moved.right <= face.width and moved.high <= face.height
    clear = not any(
        o.left < moved.right and moved.left < o.right and o.low < moved.high and moved.low < o.high for o in others
    )
    return replace(face, openings=(*others, moved)) if inside and clear else None
