"""A sheet of bars over a dated axis, in millimeters from the upper left; kinds are told apart by form alone."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from typing import NamedTuple

from specgen.documents.figures.labels import CAPITAL, LEAST_SIZE, Label, measure, shorten
from specgen.documents.figures.rendering import render_figure
from specgen.model.block import Figure, Text

WIDTH, MOST_HEIGHT = 232.0, 158.0  # what a page that lies on its side has room for, with a caption
ROW = 3.55
TOP, FOOT = 7.0, 7.5  # for the dates above, the legend below
MOST_ROWS = int((MOST_HEIGHT - TOP - FOOT) / ROW)
_LABELS, _RIGHT = 56.0, 4.0  # for the names at the left, and beside the last day
_BAR = 2.2  # height
_LEAST_BAR = 0.6
_HATCH = 1.1
_LEAST_DAY = 1.2  # millimeters of a day in which one that is off can be seen
_APART = 13.0  # from date to date above the axis
_STEPS = (1, 2, 7, 14, 28, 56, 91, 182, 364)  # days from date to date
_DAY = timedelta(days=1)
_LEGEND = (
    ("work", "work in the shift"),
    ("drying", "drying, by the clock"),
    ("wait", "planned wait"),
    ("hold", "release of a hold point"),
    ("open", "review, delivery, mockup"),
    ("weather", "weather days"),
    ("whole", "elevation, first to last"),
    ("band", "day off"),
)


class Bar(NamedTuple):
    """One bar: its kind, a key of the legend, and what it spans."""

    kind: str
    start: datetime
    end: datetime


class BarRow(NamedTuple):
    """A row: its name, whether it governs the end, and its bars, told by day where they are of whole days.

    A head has no bars.
    """

    name: str
    governs: bool = False
    bars: tuple[Bar, ...] = ()
    head: bool = False
    whole_days: bool = False


@dataclass
class BarSheet:
    """What is drawn of some rows over the days that they span."""

    rows: tuple[BarRow, ...]
    is_off: Callable[[date], bool]
    strokes: dict[str, str] = field(default_factory=dict)
    words: list[Label] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Finds the first and the last day."""
        bars = [bar for row in self.rows for bar in row.bars]
        self.first = min(bar.start for bar in bars).date()
        self.days = (max(bar.end for bar in bars).date() - self.first).days + 1
        self.per_day = (WIDTH - _LABELS - _RIGHT) / self.days
        self.bottom = TOP + ROW * len(self.rows)

    def place(self, moment: datetime) -> float:
        """Where a moment stands from the left."""
        return _LABELS + (moment - datetime.combine(self.first, datetime.min.time())) / _DAY * self.per_day

    def finish(self, caption: str, alt: str) -> Figure:
        """The figure of the sheet."""
        self._draw_days()
        for number, row in enumerate(self.rows):
            self._draw_row(row, TOP + ROW * number)
        self._add("axis", ((_LABELS, TOP), (WIDTH - _RIGHT, TOP)))
        self._draw_legend()
        height = round(self.bottom + FOOT, 3)
        values = {"width": WIDTH, "height": height, "size": LEAST_SIZE, "strokes": self.strokes, "words": self.words}
        svg = render_figure("schedule_bars", values | {"title": caption, "alt": alt})
        return Figure("schedule_bars", (Text(caption),), svg, alt, WIDTH, height)

    def _draw_days(self) -> None:
        """Days off as bands where a day is wide enough, and dates above the axis."""
        for number in range(self.days):
            day = self.first + _DAY * number
            if self.per_day >= _LEAST_DAY and self.is_off(day):
                left = _LABELS + number * self.per_day
                self._box("band", left, left + self.per_day, TOP, self.bottom)
        for day in self._list_dates():
            x = _LABELS + (day - self.first).days * self.per_day
            self._add("grid", ((x, TOP - 1), (x, self.bottom)))
            self.words.append(Label(f"{day:%b} {day.day}", x, TOP - 1.8, anchor="middle"))

    def _list_dates(self) -> Iterator[date]:
        """The days that are written: every one, else Mondays, as far apart as their words are wide."""
        step = next((step for step in _STEPS if step * self.per_day >= _APART), _STEPS[-1])
        day = self.first if step < 7 else self.first + _DAY * (-self.first.weekday() % 7)
        while (day - self.first).days < self.days:
            yield day
            day += _DAY * step

    def _draw_row(self, row: BarRow, top: float) -> None:
        base = top + ROW / 2 + LEAST_SIZE * CAPITAL / 2
        bold = row.governs or row.head
        left = 0.0 if row.head else 2.0
        self.words.append(
            Label(shorten(row.name, _LABELS - left - 1.5, bold=bold), left, base, anchor="start", bold=bold)
        )
        if row.head:
            self._add("axis", ((0, top), (WIDTH - _RIGHT, top)))
        else:
            self._add("row", ((_LABELS, top + ROW), (WIDTH - _RIGHT, top + ROW)))
        for bar in row.bars:
            start, end = self.place(bar.start), self.place(bar.end)
            self.draw_bar(bar.kind, start, max(end, start + _LEAST_BAR), top + (ROW - _BAR) / 2)

    def draw_bar(self, kind: str, left: float, right: float, top: float) -> None:
        """A bar of a kind, as it stands in a row and in the legend."""
        middle, bottom = top + _BAR / 2, top + _BAR
        if kind == "hold":
            half = _BAR / 2 + 0.2
            corners = ((left, middle - half), (left + half, middle), (left, middle + half), (left - half, middle))
            self._add(kind, corners, closed=True)
        elif kind == "wait":
            self._add(kind, ((left, middle), (right, middle)))
        elif kind == "whole":
            self._add(kind, ((left, middle), (right, middle)))
            self._add(kind, ((left, top), (left, bottom)))
            self._add(kind, ((right, top), (right, bottom)))
        else:
            self._box(kind, left, right, top, bottom)
        if kind == "drying":
            self._hatch(left, right, top, bottom)

    def _hatch(self, left: float, right: float, top: float, bottom: float) -> None:
        """Lines that rise to the right, cut off at the ends of the bar."""
        high, x = bottom - top, left - (bottom - top)
        while x < right:
            start, end = max(x, left), min(x + high, right)
            if start < end:
                self._add("hatch", ((start, bottom - (start - x)), (end, bottom - (end - x))))
            x += _HATCH

    def _box(self, kind: str, left: float, right: float, top: float, bottom: float) -> None:
        self._add(kind, ((left, top), (right, top), (right, bottom), (left, bottom)), closed=True)

    def _add(self, kind: str, points: tuple[tuple[float, float], ...], *, closed: bool = False) -> None:
        path = "L".join(f"{x:.2f} {y:.2f}" for x, y in points)
        self.strokes[kind] = f"{self.strokes.get(kind, '')}M{path}{'Z' if closed else ''}"

    def _draw_legend(self) -> None:
        """The forms that are on the sheet, with their names; names in bold set the end."""
        top, x = self.bottom + 3.2, 0.0
        base = top + _BAR / 2 + LEAST_SIZE * CAPITAL / 2
        for kind, name in _LEGEND:
            if kind in self.strokes:
                self.draw_bar(kind, x + (1.3 if kind == "hold" else 0), x + 6, top)
                self.words.append(Label(name, x + (4 if kind == "hold" else 7), base, anchor="start"))
                x += (4 if kind == "hold" else 7) + measure(name) + 4
        if any(row.governs for row in self.rows):
            self.words.append(Label("bold", x, base, anchor="start", bold=True))
            self.words.append(Label("governs", x + measure("bold", bold=True) + 1.2, base, anchor="start"))
