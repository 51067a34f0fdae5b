"""A section on paper: areas with their hatching, lines, dimensions and words, in millimeters from the upper left.

Lines and hatching follow ISO 128, dimensions ISO 129, in a plain style of our own: nothing is told by color.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from math import cos, pi, sin

from specgen.documents.figures.hatching import hatch
from specgen.documents.figures.labels import LEAST_SIZE, Anchor, Label, measure, wrap_words
from specgen.documents.figures.rendering import render_figure
from specgen.model.block import Figure, Text

Point = tuple[float, float]
# What fits beside the margins of a letter page and of an A4 page.
PAGE_WIDTH = 160.0
SIZE = LEAST_SIZE
LEAD = 1.35  # from line to line, in sizes of the type
_ARROW, _HALF = 2.2, 0.4  # length, and half of the width, of an arrowhead
_BEYOND, _GAP = 1.2, 0.8  # how far an extension line runs past its dimension, and stays off what it measures
_BALLOON = 2.3  # radius


@dataclass(frozen=True, slots=True)
class Stroke:
    """An open line of a kind: outline, thin, hidden, metal."""

    kind: str
    path: str


def write_path(points: Iterable[Point], closed: bool = False) -> str:
    """Points as the path of an SVG."""
    steps = (f"{x:.2f} {y:.2f}" for x, y in points)
    return "M" + "L".join(steps) + ("Z" if closed else "")


@dataclass
class Sheet:
    """What is drawn, kind by kind."""

    areas: list[tuple[str, str, str]] = field(default_factory=list)  # outline, lines of its hatching, tone
    strokes: list[Stroke] = field(default_factory=list)
    arrows: list[str] = field(default_factory=list)
    dots: list[Point] = field(default_factory=list)
    balloons: list[Point] = field(default_factory=list)
    words: list[Label] = field(default_factory=list)

    def area(self, kind: str, points: Sequence[Point]) -> None:
        """A cut material, told by its hatching."""
        lines, fill = hatch(kind, points)
        self.areas.append((write_path(points, closed=True), lines, fill))

    def rectangle(self, kind: str, x: float, y: float, width: float, height: float) -> None:
        """A cut material with level and plumb sides."""
        self.area(kind, ((x, y), (x + width, y), (x + width, y + height), (x, y + height)))

    def line(self, kind: str, *points: Point, closed: bool = False) -> None:
        """A line through points."""
        self.strokes.append(Stroke(kind, write_path(points, closed)))

    def circle(self, kind: str, center: Point, across: float, high: float) -> None:
        """An ellipse that is cut, such as a backer rod."""
        turns = [pi * n / 18 for n in range(36)]
        self.area(kind, [(center[0] + across / 2 * cos(t), center[1] + high / 2 * sin(t)) for t in turns])

    def say(self, x: float, y: float, text: str, *, anchor: Anchor = "start", bold: bool = False) -> None:
        """Words whose first line stands on `y`."""
        self.words.append(Label(text, x, y, SIZE, anchor, bold))

    def say_lines(self, x: float, y: float, text: str, width: float, *, bold: bool = False) -> float:
        """Words wrapped to a width; the height they take."""
        lines = wrap(text, width)
        for number, line in enumerate(lines):
            self.say(x, y + number * SIZE * LEAD, line, bold=bold)
        return len(lines) * SIZE * LEAD

    def lead(self, at: Point, to: Point, bend: float = 0.0) -> None:
        """A leader from a dot in what is meant; with `bend` it turns level so far before its end."""
        self.dots.append(at)
        self.line("thin", at, *([(to[0] - bend, to[1])] if bend else []), to)

    def number(self, at: Point, place: Point, number: str) -> None:
        """A number in a circle, led to what is meant."""
        x, y = place
        long = ((x - at[0]) ** 2 + (y - at[1]) ** 2) ** 0.5 or 1.0
        self.dots.append(at)
        self.line("thin", at, (x + (at[0] - x) * _BALLOON / long, y + (at[1] - y) * _BALLOON / long))
        self.mark(place, number)

    def mark(self, place: Point, number: str) -> None:
        """A number in a circle."""
        self.balloons.append(place)
        self.say(place[0], place[1] + SIZE * 0.36, number, anchor="middle")

    def measure_across(self, left: float, right: float, y: float, text: str, reach: tuple[float, float]) -> None:
        """A level dimension at `y`, its extension lines from the heights `reach` of the two ends."""
        for x, start in zip((left, right), reach, strict=True):
            side = 1 if y > start else -1
            self.line("thin", (x, start + side * _GAP), (x, y + side * _BEYOND))
        wide = measure(text)
        if wide + 1 <= right - left - 2 * _ARROW:
            self._set_arrows((left, y), (right, y), inside=True)
            self.say((left + right) / 2, y - 0.8, text, anchor="middle")
            return
        self._set_arrows((left, y), (right, y), inside=False)
        self.line("thin", (right + 2 * _ARROW, y), (right + 2 * _ARROW + wide + 1.5, y))
        self.say(right + 2 * _ARROW + 1, y - 0.8, text)

    def measure_down(self, top: float, bottom: float, x: float, text: str, reach: tuple[float, float]) -> None:
        """A plumb dimension at `x`, its extension lines from the places `reach`, its words on the far side of them."""
        side = 1 if x > min(reach) else -1
        for y, start in zip((top, bottom), reach, strict=True):
            if abs(x - start) > _GAP:
                self.line("thin", (start + side * _GAP, y), (x + side * _BEYOND, y))
        self._set_arrows((x, top), (x, bottom), inside=bottom - top > 3 * _ARROW)
        anchor: Anchor = "start" if side > 0 else "end"
        self.say(x + side * 1.6, (top + bottom) / 2 + SIZE * 0.36, text, anchor=anchor)

    def _set_arrows(self, start: Point, end: Point, *, inside: bool) -> None:
        """The line of a dimension with its arrowheads; those of a short one point at it from outside."""
        level = start[1] == end[1]
        for (x, y), sign in ((start, 1), (end, -1)):
            along = (_ARROW if inside else -_ARROW) * sign
            tail = ((x + along, y - _HALF), (x + along, y + _HALF))
            tail = tail if level else ((x - _HALF, y + along), (x + _HALF, y + along))
            self.arrows.append(write_path(((x, y), *tail), closed=True))
            if not inside:
                self.line("thin", (x, y), (x + 2 * along, y) if level else (x, y + 2 * along))
        self.line("thin", start, end)

    def list_key(self, entries: Sequence[tuple[str, str]], y: float, *, columns: int = 2) -> float:
        """The numbers with what they stand for, in columns; the height where it ends."""
        column = PAGE_WIDTH / columns
        most = -(-len(entries) // columns)
        ends = [y]
        for first in range(0, len(entries), most):
            down, x = y, first // most * column
            for number, text in entries[first : first + most]:
                self.say(x + 7, down + SIZE, number, anchor="end")
                down += self.say_lines(x + 9, down + SIZE, text, column - 11) + 0.8
            ends.append(down)
        return max(ends)

    def finish(self, name: str, caption: str, alt: str, height: float) -> Figure:
        """The figure by the template of its name."""
        values = {part: getattr(self, part) for part in ("areas", "strokes", "arrows", "dots", "balloons", "words")}
        values |= {"width": PAGE_WIDTH, "height": height, "size": SIZE, "radius": _BALLOON}
        svg = render_figure(name, values)
        return Figure(name, (Text(caption),), svg, alt, PAGE_WIDTH, round(height, 3))


def wrap(text: str, width: float) -> list[str]:
    """The words in lines of a width; no figure has more of them than a page."""
    return wrap_words(text, width, 60, SIZE)


def wave(x: float, top: float, bottom: float) -> list[Point]:
    """The line of a break, from above to below: what is cut off goes on."""
    steps = max(int((bottom - top) / 4), 2)
    heights = [top + (bottom - top) * n / steps for n in range(steps + 1)]
    points: list[Point] = []
    for n, (upper, lower) in enumerate(pairwise(heights)):
        points += [(x, upper), (x + (0.8 if n % 2 else -0.8), (upper + lower) / 2)]
    return [*points, (x, bottom)]
