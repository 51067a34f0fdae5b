"""Puts the rows of a file in the order of time, hour after hour: gaps, repeated hours, the nights clocks change.

The night the clock goes back a local hour is there twice, and both are hours; the night it goes forward one is not
there, and none is missing. Of an hour that is told twice otherwise none of the readings counts, unless they are alike.
"""

from collections.abc import Iterator
from datetime import datetime, timedelta
from itertools import pairwise
from typing import NamedTuple

from specgen.model.problem import Problem, Refused
from specgen.model.value_text import count
from specgen.weather.hours import Column, HourlyData, Readings

_HOUR = timedelta(hours=1)
_SUNDAY, _NIGHT = 6, 4  # clocks change in the first hours of a Sunday
_BACK, _FORWARD = (3, 4, 10, 11), (3, 4, 9, 10)  # months of either, north and south of the equator
_MOST_TOLD = 5
_MOST_HOURS = 40 * 366 * 24


class _Slot(NamedTuple):
    start: datetime
    place: int | None  # in the readings; None for an hour that is missing, or told twice and not alike


def put_in_order(readings: Readings, shown: str) -> HourlyData:
    """The hours of a file from the first to the last; raises Refused where they span more than forty years."""
    typical = _is_typical(readings.starts)
    order = _order(readings, typical)
    notes: list[str] = []
    slots = list(_fill(readings, order, typical, notes, shown))
    columns: dict[str, Column] = {
        name: [None if place is None else column[place] for _, place in slots]
        for name, column in readings.columns.items()
    }
    if typical:
        notes.append("a typical year: its months are of different years, and are told with those of the file")
    gone = sum(1 for _, place in slots if place is None)
    return HourlyData(
        shown,
        [start for start, _ in slots],
        [0 if place is None else readings.rows[place] for _, place in slots],
        columns,
        readings.station,
        typical,
        (*readings.notes, *_shorten(notes)),
        gone,
    )


def _is_typical(starts: list[datetime]) -> bool:
    """Whether months of different years stand in the order of the calendar, as in a typical year."""
    if len({start.year for start in starts}) < 2:
        return False
    turns = [(one, other) for one, other in pairwise(starts) if other.year != one.year]
    return any(not timedelta(0) < other - one <= timedelta(days=60) for one, other in turns) and all(
        _follows(one, other) for one, other in turns
    )


def _follows(one: datetime, other: datetime) -> bool:
    """Whether a row begins the month after another that ends one, whatever their years."""
    after = one + _HOUR
    if (after.month, after.day) == (2, 29):  # a typical year has none
        after += timedelta(days=1)
    return (after.month, 1, 0) == (other.month, other.day, other.hour) == (after.month, after.day, after.hour)


def _order(readings: Readings, typical: bool) -> list[int]:
    """The places of the readings in the order of time; those of a typical year stand in it."""
    starts, zones = readings.starts, readings.zones
    if typical:
        return list(range(len(starts)))
    if zones is not None:
        return sorted(range(len(starts)), key=lambda at: starts[at] - timedelta(minutes=zones[at]))
    return sorted(range(len(starts)), key=starts.__getitem__)


def _fill(readings: Readings, order: list[int], typical: bool, notes: list[str], shown: str) -> Iterator[_Slot]:
    """Each hour in turn, with those that are missing; `notes` takes what is told of them."""
    starts, zones = readings.starts, readings.zones
    instants = starts if zones is None else [at - timedelta(minutes=z) for at, z in zip(starts, zones, strict=True)]
    if not typical and instants[order[-1]] - instants[order[0]] > _MOST_HOURS * _HOUR:
        message = f"the hours span from {starts[order[0]].year} to {starts[order[-1]].year}"
        hint = "look for a year that is mistyped, or give at most forty years"
        raise Refused(Problem(message, hint, file=shown, line=readings.rows[order[0]]))
    at = 0
    while at < len(order):
        place = order[at]
        alike = _count_alike(instants, order, at, typical)
        if alike > 1:
            yield from _settle(readings, order[at : at + alike], zones is None, notes)
        else:
            yield _Slot(starts[place], place)
        at += alike
        if at < len(order):
            yield from _bridge(readings, instants, order[at - 1], order[at], typical, notes)


def _count_alike(instants: list[datetime], order: list[int], at: int, typical: bool) -> int:
    end = at + 1
    while not typical and end < len(order) and instants[order[end]] == instants[order[at]]:
        end += 1
    return end - at


def _settle(readings: Readings, places: list[int], by_clock: bool, notes: list[str]) -> Iterator[_Slot]:
    """The one hour that is told more than once, or the two of a night in which the clock goes back."""
    start, rows = readings.starts[places[0]], ", ".join(str(readings.rows[place]) for place in places)
    if by_clock and len(places) == 2 and abs(places[1] - places[0]) == 1 and _is_night(start, _BACK):
        notes.append(f"{_tell(start)} is there twice, in rows {rows}: the clock goes back, and both hours count")
        yield from (_Slot(start, place) for place in places)
        return
    told = {tuple(column[place] for column in readings.columns.values()) for place in places}
    if len(told) == 1:
        notes.append(f"rows {rows} tell the same hour alike, {_tell(start)}: one counts")
        yield _Slot(start, places[0])
        return
    notes.append(f"rows {rows} tell the same hour differently, {_tell(start)}: it is not known, and not counted as fit")
    yield _Slot(start, None)


def _bridge(
    readings: Readings, instants: list[datetime], before: int, after: int, typical: bool, notes: list[str]
) -> Iterator[_Slot]:
    """The hours missing between two rows."""
    apart = round((instants[after] - instants[before]) / _HOUR) - 1
    if typical and _follows(instants[before], instants[after]):
        return
    first = readings.starts[before] + _HOUR
    if readings.zones is None and apart == 1 and _is_night(first, _FORWARD):
        notes.append(f"{_tell(first)} is not there: the clock goes forward, and no hour is missing")
        return
    if apart < 1:
        return
    row = readings.rows[after]
    notes.append(f"before row {row}: {count(apart, 'hour')} missing from {_tell(first)}, not counted as fit")
    yield from (_Slot(first + step * _HOUR, None) for step in range(apart))


def _is_night(start: datetime, months: tuple[int, ...]) -> bool:
    return start.weekday() == _SUNDAY and start.hour < _NIGHT and start.month in months


def _tell(start: datetime) -> str:
    return f"{start:%Y-%m-%d %H:%M}"


def _shorten(notes: list[str]) -> list[str]:
    more = len(notes) - _MOST_TOLD
    return [*notes[:_MOST_TOLD], f"and {count(more, 'more note')} on gaps and repeated hours"] if more > 1 else notes
