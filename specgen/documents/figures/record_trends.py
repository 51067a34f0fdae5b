"""Trends of the site record: readings in their order against their limits, those outside told by their form."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from math import cos, floor, log10, pi, sin

from specgen.documents.context import DocumentContext
from specgen.documents.figures.labels import measure
from specgen.documents.figures.section_sheet import SIZE, Sheet, write_path
from specgen.documents.records.entry_text import tell_when
from specgen.documents.records.trend_data import LEAST_READINGS, Bound, Trend, list_trends
from specgen.model.block import Figure, Inline, Text, Value
from specgen.quantities.format import format_decimal

_LEFT, _RIGHT, _TOP, _HIGH = 13.0, 133.0, 7.0, 34.0
_FOOT = 10.0  # below the axis: its figures, and what they are
_DOT, _SIGN = 0.75, 1.15  # radius of a reading within, half the side of the sign of one outside
_NEAR = 0.25  # readings that lie nearer to each other on paper are drawn once
_STEPS = (1, 2, 5, 10)
_MOST_TOLD = 40  # readings that the text alternative lists one by one


def draw(context: DocumentContext) -> tuple[Figure, ...]:
    """A figure for each quantity with enough readings."""
    trends = (trend for trend in list_trends(context) if len(trend.points) >= LEAST_READINGS)
    return tuple(_draw_trend(trend) for trend in trends)


def tell_not_drawn(context: DocumentContext) -> str:
    """`Water, primer (2 readings)`: what has too few readings to draw; empty where all are drawn."""
    few = (trend for trend in list_trends(context) if len(trend.points) < LEAST_READINGS)
    return "; ".join(f"{t.title} ({len(t.points)} reading{'s' if len(t.points) > 1 else ''})" for t in few)


class _Scale:
    """Values and places of a trend on paper."""

    def __init__(self, trend: Trend) -> None:
        values = [point.value for point in trend.points] + [bound.value for bound in trend.bounds]
        spare = (max(values) - min(values) or abs(values[0]) / 4 or 1.0) * 0.06  # keeps readings off the frame
        low, high = min(values) - spare, max(values) + spare
        self.step = _choose_step(high - low)
        self.low = floor(low / self.step) * self.step
        self.count = max(1, -floor(-(high - self.low) / self.step))
        self.first, self.last = trend.points[0].at, trend.points[-1].at

    def x(self, at: float) -> float:
        """The place along the paper; a margin keeps the first and the last off the axis."""
        share = (at - self.first) / (self.last - self.first) if self.last > self.first else 0.5
        return _LEFT + 3 + share * (_RIGHT - _LEFT - 6)

    def y(self, value: float) -> float:
        """The place down the paper."""
        return _TOP + _HIGH * (1 - (value - self.low) / (self.step * self.count))


def _choose_step(span: float) -> float:
    """The distance of the values at the axis: 1, 2 or 5 with its power of ten, about four of them over a span."""
    power: float = 10.0 ** floor(log10(span / 4))
    return next(step * power for step in _STEPS if step * power >= span / 4)


def _draw_trend(trend: Trend) -> Figure:
    sheet, scale = Sheet(), _Scale(trend)
    _draw_axes(sheet, trend, scale)
    _draw_bounds(sheet, trend, scale)
    drawn = set[tuple[int, int, bool]]()
    for point in sorted(trend.points, key=lambda point: point.outside):
        x, y = scale.x(point.at), scale.y(point.value)
        place = (round(x / _NEAR), round(y / _NEAR), point.outside)
        if place in drawn:
            continue
        drawn.add(place)
        if point.outside:
            sheet.arrows.append(_sign(x, y))
        else:
            turns = (pi * n / 6 for n in range(12))
            sheet.line("point", *((x + _DOT * cos(t), y + _DOT * sin(t)) for t in turns), closed=True)
    _draw_key(sheet, trend)
    figure = sheet.finish("record_trends", "", _describe(trend), _TOP + _HIGH + _FOOT)
    return replace(figure, caption=tuple(_caption(trend)))


def _sign(x: float, y: float) -> str:
    """The triangle of a reading outside its limit, as the forms have it."""
    corners = ((x, y - _SIGN), (x + _SIGN, y + _SIGN * 0.8), (x - _SIGN, y + _SIGN * 0.8))
    return write_path(corners, closed=True)


def _draw_axes(sheet: Sheet, trend: Trend, scale: _Scale) -> None:
    """The axes, values with their unit, and what stands along the foot."""
    for n in range(scale.count + 1):
        value = scale.low + n * scale.step
        y = scale.y(value)
        sheet.line("axis", (_LEFT - 1, y), (_RIGHT if not n else _LEFT, y))
        sheet.say(_LEFT - 1.5, y + SIZE * 0.34, format_decimal(round(value, 9), 6), anchor="end")
    sheet.line("axis", (_LEFT, _TOP), (_LEFT, _TOP + _HIGH))
    sheet.say(_LEFT, _TOP - 2.5, trend.unit)
    taken = 0.0
    for at, text in _ticks(trend):
        x, half = scale.x(at), measure(text) / 2
        sheet.line("axis", (x, _TOP + _HIGH), (x, _TOP + _HIGH + 1))
        if x - half > taken:
            sheet.say(x, _TOP + _HIGH + 1.6 + SIZE, text, anchor="middle")
            taken = x + half + 2
    _draw_batches(sheet, trend, scale)


def _ticks(trend: Trend) -> Iterator[tuple[float, str]]:
    """The first and the last day with the beginnings of months between them, or numbers of pails."""
    first, last = trend.points[0].at, trend.points[-1].at
    if not trend.dated:
        step = max(1, round(_choose_step(max(last - first, 1.0) * 0.5)))
        yield from ((at, str(at)) for at in (1, *range(step, int(last) + 1, step)) if at == 1 or at > 1)
        return
    start, end = date.fromordinal(int(first)), date.fromordinal(int(last))
    yield first, start.isoformat()
    months = [date(start.year + n // 12, n % 12 + 1, 1) for n in range(start.month, start.month + _months(start, end))]
    yield from ((day.toordinal(), day.isoformat()) for day in months if start < day < end)
    if end != start:
        yield last, end.isoformat()


def _months(start: date, end: date) -> int:
    return (end.year - start.year) * 12 + end.month - start.month


def _draw_batches(sheet: Sheet, trend: Trend, scale: _Scale) -> None:
    """A line where the batch changes, with the name of the next one where it has room."""
    if trend.dated:
        return
    before, taken = None, _LEFT + measure(trend.unit) + 2
    for point in trend.points:
        batch = point.entry.get("batch")
        if batch is not None and batch != before:
            x = scale.x(point.at - 0.5) if before is not None else scale.x(point.at)
            if before is not None:
                sheet.line("batch", (x, _TOP), (x, _TOP + _HIGH))
            x = max(x, taken)
            if x + measure(f"batch {batch}") <= _RIGHT:
                sheet.say(x, _TOP - 2.5, f"batch {batch}")
                taken = x + measure(f"batch {batch}") + 3
            before = batch


def _draw_bounds(sheet: Sheet, trend: Trend, scale: _Scale) -> None:
    """Each limit with its words at the right, moved apart where two lie close."""
    y = 0.0
    for bound in sorted(trend.bounds, key=lambda bound: -bound.value):
        level = scale.y(bound.value)
        sheet.line("target" if bound.sense == "target" else "limit", (_LEFT, level), (_RIGHT, level))
        y = max(level + SIZE * 0.34, y + SIZE * 1.25)
        sheet.say(_RIGHT + 1.5, y, _name(bound))


def _name(bound: Bound) -> str:
    """`max. 33`: the value in the unit of the axis."""
    short = {"minimum": "min.", "maximum": "max.", "target": "target"}[bound.sense]
    return f"{short} {format_decimal(round(bound.value, 6), 4, 2)}"


def _draw_key(sheet: Sheet, trend: Trend) -> None:
    """What the signs mean, and what stands along the foot."""
    y = _TOP + _HIGH + 1.6 + SIZE * 2.5
    x = _LEFT
    if not trend.dated:
        text = f"{trend.of_each}s in their order"
        sheet.say(x, y, text)
        x += measure(text) + 8
    middle = y - SIZE * 0.34
    turns = (pi * n / 6 for n in range(12))
    sheet.line("point", *((x + _DOT * cos(t), middle + _DOT * sin(t)) for t in turns), closed=True)
    sheet.say(x + 2, y, "within" if _has_limit(trend) else "reading")
    if any(point.outside for point in trend.points):
        x += measure("within") + 8
        sheet.arrows.append(_sign(x, middle))
        sheet.say(x + 2.2, y, "outside")


def _has_limit(trend: Trend) -> bool:
    return any(bound.sense != "target" for bound in trend.bounds)


def _caption(trend: Trend) -> Iterator[Inline]:
    """What is shown with its unit, and its limits with their sources."""
    yield Text(f"{trend.title}, {trend.unit}")
    told = [(str(bound.sense), bound.shown) for bound in trend.bounds]
    if trend.is_within and told:  # both sides of one figure
        told = [("within", told[0][1])]
    for number, (sense, shown) in enumerate(told):
        lead = ", " if number else ". Limits: " if len(told) > 1 else ". Limit: "
        yield Text(". Target " if sense == "target" else f"{lead}{sense} ")
        yield Value(shown.text, shown.source, about=f"{trend.title}, {sense}")
    if not told:
        yield Text(". The project gives no limit")


def _describe(trend: Trend) -> str:
    """The figure in words with its numbers."""
    values = [point.value for point in trend.points]
    outside = [point for point in trend.points if point.outside]
    first, last = (tell_when(trend.points[end].entry) for end in (0, -1))
    parts = [f"{trend.title}, in {trend.unit}: {len(values)} readings, {_tell(min(values))} to {_tell(max(values))}"]
    parts += [f"from {first} to {last}"] if first and last else []
    parts += [f"{bound.sense} {_tell(bound.value)}" for bound in trend.bounds]
    parts += [f"outside {len(outside)}" if outside else "none outside"] if _has_limit(trend) or outside else []
    listed = trend.points if len(values) <= _MOST_TOLD else outside[:_MOST_TOLD]
    which = "Readings" if len(values) <= _MOST_TOLD else "Outside" if len(outside) <= _MOST_TOLD else "First outside"
    told = ", ".join(_tell(point.value) for point in listed)
    return f"{', '.join(parts)}." + (f" {which}: {told}." if told else "")


def _tell(value: float) -> str:
    return format_decimal(round(value, 6), 5, 2)
