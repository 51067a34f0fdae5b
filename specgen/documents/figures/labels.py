"""Labels of drawings: measured by a table of advances of our fonts, and placed so that no two overlap.

Lengths are millimeters on paper, from the upper left; nothing here loads a font.
"""

import json
from collections.abc import Iterable
from functools import cache, lru_cache
from pathlib import Path
from typing import Literal, NamedTuple

# Type of this size has capitals and figures of 2 mm, the least height of anything that is to be read.
LEAST_SIZE = 2.95
CAPITAL = 0.688  # height of capitals, in parts of the size
_RISE, _FALL = 0.74, 0.22  # of the tallest and the deepest letter
_GAP = 0.35  # kept free around a label
_CELL = 8.0
_UNKNOWN = 1.0  # a character that the table lacks is as wide as the size

Anchor = Literal["start", "middle", "end"]


class Box(NamedTuple):
    """A rectangle on paper."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: "Box") -> bool:
        """Whether the two have an area in common."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def holds(self, other: "Box") -> bool:
        """Whether the other lies within this one."""
        return (
            self.left <= other.left
            and self.top <= other.top
            and self.right >= other.right
            and self.bottom >= other.bottom
        )

    def grow(self, by: float) -> "Box":
        """The rectangle, larger on each side."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)


@cache
def _advances(bold: bool) -> dict[str, float]:
    table = json.loads((Path(__file__).parent / "advances.json").read_text("utf-8"))
    return {char: units / table["units"] for char, units in table["bold" if bold else "regular"].items()}


@lru_cache(10_000)
def measure(text: str, size: float = LEAST_SIZE, bold: bool = False) -> float:
    """The width of a line of text, in millimeters."""
    advances = _advances(bold)
    try:
        return size * sum([advances[char] for char in text])
    except KeyError:
        return size * sum(advances.get(char, _UNKNOWN) for char in text)


class Label(NamedTuple):
    """A line of text at its baseline; one that is turned reads from the right side of the sheet."""

    text: str
    x: float
    y: float
    size: float = LEAST_SIZE
    anchor: Anchor = "middle"
    bold: bool = False
    turned: bool = False

    @property
    def box(self) -> Box:
        """What the label covers."""
        width = measure(self.text, self.size, self.bold)
        before = {"start": 0.0, "middle": width / 2, "end": width}[self.anchor]
        rise, fall = self.size * _RISE, self.size * _FALL
        if self.turned:
            return Box(self.x - rise, self.y + before - width, self.x + fall, self.y + before)
        return Box(self.x - before, self.y - rise, self.x - before + width, self.y + fall)


def center_label(
    text: str, x: float, y: float, size: float = LEAST_SIZE, bold: bool = False, turned: bool = False
) -> Label:
    """The label whose capitals stand about a point."""
    half = size * CAPITAL / 2
    if turned:
        return Label(text, x + half, y, size, "middle", bold, True)
    return Label(text, x, y + half, size, "middle", bold)


def wrap_words(text: str, width: float, lines: int, size: float = LEAST_SIZE, bold: bool = False) -> list[str]:
    """The text on at most so many lines of a width; what does not fit is cut off behind an ellipsis."""
    rest, made = text.split(), list[str]()
    while rest and len(made) < lines:
        count = 1
        while count < len(rest) and measure(" ".join(rest[: count + 1]), size, bold) <= width:
            count += 1
        made.append(" ".join(rest[:count]))
        rest = rest[count:]
    if rest:
        made[-1] = f"{made[-1]} {' '.join(rest)}"
    return [shorten(line, width, size, bold) for line in made]


def shorten(text: str, width: float, size: float = LEAST_SIZE, bold: bool = False) -> str:
    """The text, cut off behind an ellipsis where it is wider than a width."""
    if measure(text, size, bold) <= width:
        return text
    while text and measure(f"{text}…", size, bold) > width:
        text = text[:-1]
    return f"{text.rstrip()}…"


class LabelSpace:
    """What is taken on a sheet; a label is placed only where nothing is."""

    def __init__(self, within: Box) -> None:
        self.within = within
        self.lowest = within.top  # the lower edge of all that is taken
        self._cells: dict[tuple[int, int], list[Box]] = {}

    def take(self, box: Box) -> None:
        """Keep a box free of labels."""
        self._take(box, _cells(box))

    def place(self, choices: Iterable[Label]) -> Label | None:
        """The first of the labels that finds a place on the sheet, which it takes; None where none does."""
        for label in choices:
            box = label.box.grow(_GAP)
            if self.within.holds(box):
                cells = _cells(box)
                if not self._is_taken(box, cells):
                    self._take(box, cells)
                    return label
        return None

    def claim(self, choices: Iterable[Box]) -> Box | None:
        """The first of the boxes in which nothing stands, which is then taken; None where there is none."""
        for box in choices:
            cells = _cells(box)
            if not self._is_taken(box, cells):
                self._take(box, cells)
                return box
        return None

    def _is_taken(self, box: Box, cells: list[tuple[int, int]]) -> bool:
        for cell in cells:
            for other in self._cells.get(cell, ()):
                if box.meets(other):
                    return True
        return False

    def _take(self, box: Box, cells: list[tuple[int, int]]) -> None:
        self.lowest = max(self.lowest, box.bottom)
        for cell in cells:
            self._cells.setdefault(cell, []).append(box)


def _cells(box: Box) -> list[tuple[int, int]]:
    """The cells of the grid that a box lies in."""
    left, right = int(box.left // _CELL), int(box.right // _CELL)
    top, bottom = int(box.top // _CELL), int(box.bottom // _CELL)
    if left == right and top == bottom:
        return [(left, top)]
    return [(column, row) for column in range(left, right + 1) for row in range(top, bottom + 1)]
