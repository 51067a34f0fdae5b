"""The hours of a year as strips: a column for each day, an hour in each of its rows, told apart by form.

Fit hours are black; what takes the others is hatched by its kind. An hour outside the shift is blank.
"""

from collections.abc import Iterator, Sequence
from datetime import date, datetime
from math import ceil
from typing import NamedTuple

from specgen.documents.figures.hatching import hatch
from specgen.documents.figures.labels import LEAST_SIZE, measure
from specgen.documents.figures.rendering import render_figure
from specgen.model.dates import MONTHS
from specgen.model.value_text import count
from specgen.terminal.weather_text import FaceSummary, WeatherReport
from specgen.weather.judging import OUTSIDE, UNKNOWN, first_cause
from specgen.weather.summary import END, summarize

# How each kind is drawn: a name in the legend, and the hatching; fit is filled.
KINDS = {
    "fit": "fit",
    "sun": "direct sun, hot wall, dark",
    "cold": "cold, now or in hold; frost",
    "wet": "rain, humid, near dew point",
    "wind": "wind, gust",
    "unknown": "not known",
}
_OF = {
    "dark": "sun",
    "direct sun": "sun",
    "wall hot": "sun",
    "frost before": "cold",
    "air cold": "cold",
    "cold in hold": "cold",
    "wall cold": "cold",
    "rain": "wet",
    "rain in hold": "wet",
    "humid": "wet",
    "near dew point": "wet",
    "wind": "wind",
    "gust": "wind",
    END: "unknown",
    "reading missing": "unknown",
}
_MOST_DAYS, _FEW_DAYS = 366, 31
_HOUR, _WIDEST_DAY, _ALL_DAYS = 1.25, 34.0, 250.0  # millimeters: of an hour upward, of a day and of a year across
_LEFT, _RIGHT, _TOP, _GAP, _HEAD, _KEY = 16.0, 8.0, 8.0, 5.0, 9.0, 6.0
_DOT = 25.4 / 200


class StripFigure(NamedTuple):
    """A drawn figure: SVG, its width on paper in millimeters, and what it says in words."""

    svg: str
    width: float
    alt: str


class _Strip(NamedTuple):
    top: float
    days: list[date]
    runs: list[tuple[int, int, int, str]]  # day, first hour, hour behind the last, kind


def draw_strip(report: WeatherReport, face: FaceSummary) -> StripFigure:
    """The hours of an elevation, a strip for each year of the file."""
    strips = list(_lay_strips(report.data.starts, face.causes))
    most = max(len(strip.days) for strip in strips)
    day = min(_WIDEST_DAY, _ALL_DAYS / most)
    title = f"Fit hours for {report.step}{', ' + face.name if face.name else ''}"
    key = list(_place_key(strips[-1].top + 24 * _HOUR + _GAP + 3))
    right = max(_LEFT + most * day, _LEFT + measure(title, LEAST_SIZE * 1.2, True), max(x for x, *_ in key) + 62)
    texts = [(_LEFT, _TOP - 1.5, title, "start", True)]
    for strip in strips:
        texts += _label(strip, day)
    if not report.all_hours:
        texts.append((_LEFT, key[-1][1] + _KEY + 3, "Blank: outside the shift.", "start", False))
    alt = describe(report, face)
    values = {
        "width": _whole(right + _RIGHT),
        "height": _whole(key[-1][1] + _KEY + 5),
        "size": LEAST_SIZE,
        "title": title,
        "alt": alt,
        "areas": [(kind, *_path(kind, strips, day)) for kind in KINDS],
        "frames": [(_LEFT, strip.top, _LEFT + len(strip.days) * day, strip.top + 24 * _HOUR) for strip in strips],
        "ticks": [line for strip in strips for line in _ticks(strip, day)],
        "texts": texts,
        "key": [(x, y, kind, KINDS[kind], *_swatch(kind, x, y)) for x, y, kind in key],
    }
    return StripFigure(render_figure("weather_strip", values), float(values["width"]), alt)  # type: ignore[arg-type]


def _whole(length: float) -> float:
    """The next length that is whole dots of a picture at 200 to the inch: else one of its rows is lost."""
    return ceil(length / _DOT) * _DOT


def _lay_strips(starts: Sequence[datetime], causes: Sequence[int]) -> Iterator[_Strip]:
    """The days of a file, at most a year in each strip, with the runs of each day."""
    days: list[date] = []
    hours: list[dict[int, str]] = []
    for start, bits in zip(starts, causes, strict=True):
        if not days or start.date() != days[-1]:
            days.append(start.date())
            hours.append({})
        hours[-1].setdefault(start.hour, _kind(bits))
    top = _TOP + _HEAD - 4
    for begin in range(0, len(days), _MOST_DAYS):
        part = hours[begin : begin + _MOST_DAYS]
        runs = [(at, *run) for at, day in enumerate(part) for run in _runs(day)]
        yield _Strip(top, days[begin : begin + _MOST_DAYS], runs)
        top += 24 * _HOUR + _GAP + _HEAD - 4


def _kind(bits: int) -> str:
    if not bits:
        return "fit"
    if bits & OUTSIDE:
        return ""
    return "unknown" if not bits & ~UNKNOWN else _OF[first_cause(bits)]


def _runs(day: dict[int, str]) -> Iterator[tuple[int, int, str]]:
    begin = 0
    for hour in range(1, 25):
        if hour == 24 or day.get(hour) != day.get(begin):
            if day.get(begin):
                yield begin, hour, day[begin]
            begin = hour


def _path(kind: str, strips: Sequence[_Strip], day: float) -> tuple[str, str]:
    """The outlines of all runs of a kind, and their hatching."""
    outlines, lines = [], []
    for strip in strips:
        for left, right, begin, end in _merge(strip, kind):
            x1, x2 = _LEFT + left * day, _LEFT + right * day
            y1, y2 = strip.top + begin * _HOUR, strip.top + end * _HOUR
            outlines.append(f"M{x1:.2f} {y1:.2f}H{x2:.2f}V{y2:.2f}H{x1:.2f}Z")
            if kind in _HATCHED:
                lines.append(_hatch(kind, x1, y1, x2, y2))
    return "".join(outlines), "".join(lines)


def _merge(strip: _Strip, kind: str) -> Iterator[tuple[int, int, int, int]]:
    """The runs of a kind as rectangles, those of days side by side that are alike as one."""
    open_runs: dict[tuple[int, int], list[int]] = {}
    for at, begin, end, one in strip.runs:
        if one != kind:
            continue
        span = open_runs.get((begin, end))
        if span is not None and span[1] == at:
            span[1] = at + 1
            continue
        if span is not None:
            yield span[0], span[1], begin, end
        open_runs[(begin, end)] = [at, at + 1]
    for (begin, end), span in open_runs.items():
        yield span[0], span[1], begin, end


_HATCHED = {"sun": "mat", "cold": "masonry", "wet": "plain", "wind": "sheathing", "unknown": "board"}


def _hatch(kind: str, x1: float, y1: float, x2: float, y2: float) -> str:
    """The lines of a hatching over a rectangle; level ones for what is wet."""
    if kind == "wet":
        step = _HOUR / 2
        rows = range(int(y1 / step) + 1, int(y2 / step) + 1)
        return "".join(f"M{x1:.2f} {row * step:.2f}L{x2:.2f} {row * step:.2f}" for row in rows)
    return hatch(_HATCHED[kind], ((x1, y1), (x2, y1), (x2, y2), (x1, y2)))[0]


def _label(strip: _Strip, day: float) -> Iterator[tuple[float, float, str, str, bool]]:
    """The months above a strip, of a short one its days, and the hours beside it."""
    free, few = _LEFT, len(strip.days) <= _FEW_DAYS
    for at, one in enumerate(strip.days):
        if at and one.day != 1 and not few:
            continue
        word, x = _name(one, len(strip.days)), _LEFT + at * day
        if x >= free:
            yield x, strip.top - 1, word, "start", False
            free = x + measure(word) + 1
    for hour in (0, 6, 12, 18, 24):
        yield _LEFT - 1.5, strip.top + hour * _HOUR + 1, f"{hour}:00", "end", False


def _name(day: date, days: int) -> str:
    """`Jul`, with its year where the months of one year do not tell themselves, or `Jul 12` among few days."""
    month = MONTHS[day.month - 1].capitalize()
    if days <= _FEW_DAYS:
        return f"{month} {day.day}"
    return f"{month} {day.year}" if days < _MOST_DAYS / 2 else month


def _ticks(strip: _Strip, day: float) -> Iterator[tuple[float, float, float]]:
    """Where a month begins: across, from the top of the strip to its foot."""
    for at, one in enumerate(strip.days):
        if at and one.day == 1:
            yield _LEFT + at * day, strip.top, strip.top + 24 * _HOUR


def _place_key(top: float) -> Iterator[tuple[float, float, str]]:
    for place, kind in enumerate(KINDS):
        yield _LEFT + place % 3 * 66.0, top + place // 3 * _KEY, kind


def _swatch(kind: str, x: float, y: float) -> tuple[str, str]:
    outline = f"M{x:.2f} {y:.2f}H{x + 8:.2f}V{y + 4:.2f}H{x:.2f}Z"
    return outline, _hatch(kind, x, y, x + 8, y + 4) if kind in _HATCHED else ""


def describe(report: WeatherReport, face: FaceSummary) -> str:
    """What the figure shows, in words, with its numbers."""
    summary = summarize(report.data, face.causes)
    months = "; ".join(f"{month} {counted.fit}" for month, counted in summary.months.items() if counted.worked)
    return (
        f"Each day is a column, each hour of it a row from 0:00 at the top. {summary.fit:,} of "
        f"{count(summary.worked, 'hour')} are fit for {report.step}, {count(summary.unknown, 'hour')} not known. "
        f"Fit hours by month: {months}."
    )
