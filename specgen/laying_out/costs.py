"""What lines cost: counts of panels, feet of joint and squares of areas, the most important first, in one number.

The cost of the lines of one direction, those of the other given, adds up over the strips between them.
"""

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from itertools import pairwise

from specgen.laying_out.boxes import Rectangle, measure_box
from specgen.laying_out.cutting import Box, cut_box
from specgen.laying_out.face import Face, Length, Opening
from specgen.laying_out.measuring import measure
from specgen.laying_out.runs import find_runs
from specgen.laying_out.scoring import Wishes

Sides = tuple[Length, Length, Length, Length]  # width, height, area and least side of a piece
# More than there are panels, lines or features on any elevation.
_COUNT = 10**7


class Costs:
    """The costs of strips and lines of a face; each box is measured once."""

    def __init__(self, face: Face, wishes: Wishes, *, slivers: bool = True) -> None:
        self.face, self.wishes, self._is_plain = face, wishes, face.is_rectangle
        # Places of the digits of a cost: squares of areas are the last, panels past a limit the first.
        self.length = (face.width * face.height) ** 2 + 1
        self.past = self.length * (face.width + face.height) * 4096
        self.missed = self.past * _COUNT
        self.sliver = self.missed * _COUNT
        self.over = self.sliver * _COUNT
        # A wish that is not given is never past.
        self._wish = (wishes.width or face.width, wishes.height or face.height)
        self._least = face.limits.least_side if slivers else 0
        self._moving = {True: {joint.at for joint in face.upright}, False: {joint.at for joint in face.level}}
        self._wanted = {True: dict(wishes.upright), False: dict(wishes.level)}
        self._boxes: dict[tuple[int, ...], int] = {}
        self._plain_strips: dict[tuple[bool, int, tuple[int, ...]], int] = {}
        self._strips: dict[tuple[bool, int, int], list[Opening]] = {}
        self._uprights: dict[int, list[tuple[int, int]]] = {}
        self._lines: dict[tuple[bool, int], int] = {}
        self._by_start = {
            True: sorted(face.openings, key=lambda one: one.left),
            False: sorted(face.openings, key=lambda one: one.low),
        }
        self._starts = {
            True: [one.left for one in self._by_start[True]],
            False: [one.low for one in self._by_start[False]],
        }
        self._longest = {
            True: max((one.right - one.left for one in face.openings), default=0),
            False: max((one.high - one.low for one in face.openings), default=0),
        }

    def all_wanted(self) -> int:
        """What it costs to miss every wish."""
        return self.missed * sum(times for each in self._wanted.values() for times in each.values())

    def main(self, cost: int) -> int:
        """A cost without its last digit, the squares of areas."""
        return cost // self.length

    def line(self, upright: bool, at: int) -> int:
        """The cost of a line: its length, less what it grants of the wishes."""
        key = (upright, at)
        if key not in self._lines:
            runs = find_runs(self.face, upright, at) if at not in self._moving[upright] else []
            length = sum(int(run.length) for run in runs)
            self._lines[key] = self.length * length - self.granted(upright, at)
        return self._lines[key]

    def line_within(self, at: int, low: int, high: int) -> int:
        """The cost of the part of an upright line between two heights, without what it grants."""
        if at not in self._uprights:
            runs = find_runs(self.face, True, at) if at not in self._moving[True] else []
            self._uprights[at] = [(int(run.start), int(run.end)) for run in runs]
        parts = (min(end, high) - max(start, low) for start, end in self._uprights[at])
        return self.length * sum(part for part in parts if part > 0)

    def granted(self, upright: bool, at: int) -> int:
        """What a line grants of the wishes."""
        return self.missed * self._wanted[upright].get(at, 0)

    def strip(self, upright: bool, start: int, end: int, cuts: tuple[int, ...]) -> int:
        """The cost of the panels of a strip that the cuts of the other direction divide."""
        side = end - start
        key = (upright, side, cuts)
        total = self._plain_strips.get(key)
        if total is None:
            total = self._plain_strips[key] = sum(self._plain(upright, side, b - a) for a, b in pairwise(cuts))
        for row, openings in self._touched(upright, start, end, cuts).items():
            low, high = cuts[row], cuts[row + 1]
            box = (start, low, end, high) if upright else (low, start, high, end)
            total += self.box(box, openings) - self._plain(upright, side, high - low)
        return total

    def is_past(self, upright: bool, start: int, end: int, most: int) -> bool:
        """Whether a clear stretch of wall longer than a limit runs across a strip, wherever the other lines run."""
        if end - start <= most:
            return False
        found = self._reaching(upright, start, end)
        lows = [(one.low, one.high) if upright else (one.left, one.right) for one in found]
        if sum(high - low for low, high in lows) < (self.face.height if upright else self.face.width):
            # Somewhere the strip is clear; along a step or a slope that may be beyond the edge.
            return self.face.is_rectangle
        levels = sorted({0, self.face.height if upright else self.face.width, *(x for pair in lows for x in pair)})
        return self.face.is_rectangle and any(
            self._longest_clear(upright, found, (start, end), low, high) > most for low, high in pairwise(levels)
        )

    def _longest_clear(self, upright: bool, found: list[Opening], ends: tuple[int, int], low: int, high: int) -> int:
        """The longest clear stretch across a strip between two heights that no opening begins or ends between."""
        spans = sorted(
            ((one.left, one.right) if upright else (one.low, one.high))
            for one in found
            if (one.low <= low and one.high >= high if upright else one.left <= low and one.right >= high)
        )
        longest, at = 0, ends[0]
        for left, right in spans:
            longest, at = max(longest, left - at), max(at, right)
        return max(longest, ends[1] - at)

    def _touched(self, upright: bool, start: int, end: int, cuts: tuple[int, ...]) -> dict[int, list[Opening]]:
        """The boxes of a strip that are no plain rectangle, each with the openings that reach into it."""
        touched: dict[int, list[Opening]] = {}
        for one in self._reaching(upright, start, end):
            low, high = (one.low, one.high) if upright else (one.left, one.right)
            row = max(bisect_right(cuts, low) - 1, 0)
            while row < len(cuts) - 1 and cuts[row] < high:
                touched.setdefault(row, []).append(one)
                row += 1
        if not self._is_plain:
            for row in range(len(cuts) - 1):
                touched.setdefault(row, [])
        return touched

    def _reaching(self, upright: bool, start: int, end: int) -> list[Opening]:
        """The openings that reach into a strip."""
        key = (upright, start, end)
        found = self._strips.get(key)
        if found is None:
            starts = self._starts[upright]
            first, last = bisect_right(starts, start - self._longest[upright]), bisect_right(starts, end - 1)
            near = self._by_start[upright][first:last]
            found = [one for one in near if (one.right if upright else one.high) > start]
            self._strips[key] = found
        return found

    def _plain(self, upright: bool, side: int, other: int) -> int:
        width, height = (side, other) if upright else (other, side)
        key = (width, height)
        cost = self._boxes.get(key)
        if cost is None:
            cost = self._boxes[key] = self._encode(measure_box(width, height, []))
        return cost

    def box(self, box: Box, openings: list[Opening]) -> int:
        """The cost of the panels of a box, into which some openings reach."""
        left, low, right, high = box
        key: tuple[int, ...] = box
        if self._is_plain:
            if len(openings) == 1:
                # Measured as fast as found.
                return self._encode(measure_box(right - left, high - low, [_relative(openings[0], box)]))
            # Boxes alike cost the same wherever they are.
            key = (right - left, high - low, *(side for one in openings for side in _relative(one, box)))
        cost = self._boxes.get(key)
        if cost is None:
            cost = self._boxes[key] = self._encode(self.shapes(box, openings))
        return cost

    def shapes(self, box: Box, openings: list[Opening]) -> Sequence[Sides]:
        """The panels of a box by width, height, area and least side."""
        left, low, right, high = box
        if self._is_plain:
            return measure_box(right - left, high - low, [_relative(one, box) for one in openings])
        return [measure(cells) for cells in cut_box(self.face, box, openings)]

    def _encode(self, shapes: Sequence[Sides]) -> int:
        most_wide, most_high, most_area, _ = self.face.limits
        wide, high, least_side = self._wish[0], self._wish[1], self._least
        total = 0
        for width, height, area, least in shapes:
            whole = int(area)
            total += whole * whole
            if width > most_wide or height > most_high or area > most_area:
                total += self.over
            if least < least_side:
                total += self.sliver
            if width > wide or height > high:
                total += self.past
        return total

    def all_sides(self, columns: tuple[int, ...], rows: tuple[int, ...]) -> Iterator[Sides]:
        """Every panel between cuts of both directions by width, height, area and least side."""
        for left, right in pairwise(columns):
            yield from self.strip_sides(True, left, right, rows)

    def strip_sides(self, upright: bool, start: int, end: int, cuts: tuple[int, ...]) -> Iterator[Sides]:
        """Every panel of a strip that the cuts of the other direction divide, by the same."""
        touched = self._touched(upright, start, end, cuts)
        for row, (low, high) in enumerate(pairwise(cuts)):
            box = (start, low, end, high) if upright else (low, start, high, end)
            yield from self.shapes(box, touched.get(row, []))

    def count_faults(self, sides: Sequence[Sides]) -> tuple[int, int]:
        """Panels past a limit, and those too narrow."""
        most_wide, most_high, most_area, _ = self.face.limits
        over = sum(w > most_wide or h > most_high or area > most_area for w, h, area, _ in sides)
        return over, sum(least < self._least for *_, least in sides)


def _relative(one: Opening, box: Box) -> Rectangle:
    """What of an opening lies within a box, from its lower left corner."""
    left, low, right, high = box
    return (
        one.left - left if one.left > left else 0,
        one.low - low if one.low > low else 0,
        (one.right if one.right < right else right) - left,
        (one.high if one.high < high else high) - low,
    )
