"""The times of a table of hourly data: dates and hours in any of the usual ways of writing, as beginnings of hours.

A file that counts its hours 1 to 24 tells their ends, as weather files do; one that begins its days at 0 tells their
beginnings. Twelve-hour times have am or pm behind them.
"""

import re
from collections.abc import Callable
from datetime import date, datetime, timedelta
from typing import NamedTuple

from specgen.model.problem import Problem, Refused
from specgen.quantities.number import quote

_DAY, _HOUR = 24 * 60, 60
_ISO = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})|(\d{4})(\d{2})(\d{2})")
_OTHER = re.compile(r"(\d{1,2})([/.-])(\d{1,2})\2(\d{4})")
_TIME = re.compile(
    r"(\d{1,2})(?::(\d{2})(?::(\d{2})(?:\.\d+)?)?|\.0)?\s*(?:([ap])\.?m\.?)?\s*(z|[+-][01]\d:?[0-5]\d)?", re.IGNORECASE
)
_SPLIT = re.compile(r"(\d[\d/.\-]*\d)(?:[T ]\s*)(.*)")
_EXAMPLE = "write 2027-06-14 07:00"
_YEARS = range(1800, 2200)  # of weather; bounds of our own


class Moment(NamedTuple):
    """A time of day in minutes, 0 to 1440, and minutes ahead of universal time where they stand behind it."""

    minutes: int
    zone: int | None


class Times(NamedTuple):
    """The beginnings of the hours of a file in its own local time, row by row, with what is to be told of them."""

    starts: list[datetime]
    zones: list[int] | None
    notes: tuple[str, ...]


def read_times(days: list[str], hours: list[str], rows: list[int], shown: str, ends: bool | None = None) -> Times:
    """The beginnings of the hours of rows from their texts of day and hour; raises Refused for the first that is none.

    A day is `2027-06-14` or, by its slashes, month first unless a day above 12 says otherwise. `ends` is
    whether hours are told by their ends; None where the file itself is to tell it.
    """
    day_first, notes = _find_order(days)
    dates = {text: _read_date(text, day_first) for text in set(days)}
    times = {text: _read_time(text) for text in set(hours)}
    for day, hour, row in zip(days, hours, rows, strict=True):
        if dates[day] is None:
            raise _refuse(f"{quote(day)} is not a date", _EXAMPLE, row, shown)
        if times[hour] is None:
            raise _refuse(f"{quote(hour)} is not a time of day", f"{_EXAMPLE}, or 7:00 AM", row, shown)
    moments = [times[hour] for hour in hours]
    minutes = [moment.minutes for moment in moments if moment]
    _check_minutes(minutes, hours, rows, shown)
    if ends is None:
        ends = _DAY in minutes and not any(one < _HOUR for one in minutes)
    back = _HOUR if ends else 0
    starts = [
        datetime.combine(_known(dates[day]), datetime.min.time()) + timedelta(minutes=at - back)
        for day, at in zip(days, minutes, strict=True)
    ]
    if ends:
        notes = (*notes, "hours are counted 1 to 24: hour 1 is from 0:00 to 1:00")
    return Times(starts, _zones([moment.zone for moment in moments if moment], rows, shown), notes)


def split_moments(texts: list[str]) -> tuple[list[str], list[str]]:
    """Day and hour of times in one cell: `2027-06-14T07:00`; the hour is empty where the cell has none."""
    known: dict[str, tuple[str, str]] = {}
    for text in set(texts):
        parted = _SPLIT.fullmatch(text)
        known[text] = (parted[1], parted[2].strip()) if parted else (text, "")
    return [known[text][0] for text in texts], [known[text][1] for text in texts]


def _known(day: date | None) -> date:
    return day or date.min


def _find_order(days: list[str]) -> tuple[bool, tuple[str, ...]]:
    """Whether the day stands before the month, and that it is so."""
    parts = [found for text in set(days) if (found := _OTHER.fullmatch(text))]
    first = any(int(found[1]) > 12 for found in parts) or any(found[2] == "." for found in parts)
    return first, ("dates are read day first",) if first and parts else ()


def _read_date(text: str, day_first: bool) -> date | None:
    iso, other = _ISO.fullmatch(text), _OTHER.fullmatch(text)
    if iso:
        year, month, day = (int(part) for part in iso.groups() if part)
    elif other:
        year, month, day = int(other[4]), int(other[1]), int(other[3])
        month, day = (day, month) if day_first else (month, day)
    else:
        return None
    if year not in _YEARS:
        return None
    try:
        return date(year, month, day)
    except ValueError:
        return None


def _read_time(text: str) -> Moment | None:
    found = _TIME.fullmatch(text.strip())
    if not found:
        return None
    hour, minute = int(found[1]), int(found[2] or 0)
    if found[4]:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if found[4].lower() == "p" else 0)
    if minute >= _HOUR or hour * _HOUR + minute > _DAY:
        return None
    return Moment(hour * _HOUR + minute, _read_zone(found[5]))


def _read_zone(text: str | None) -> int | None:
    if not text:
        return None
    if text in "zZ":
        return 0
    minutes = int(text[1:3]) * _HOUR + int(text[-2:])
    return -minutes if text[0] == "-" else minutes


def _check_minutes(minutes: list[int], hours: list[str], rows: list[int], shown: str) -> None:
    """Raise Refused where the rows do not stand an hour apart by the clock."""
    usual = minutes[0] % _HOUR if minutes else 0
    for at, text, row in zip(minutes, hours, rows, strict=True):
        if at % _HOUR != usual:
            message = f"{quote(text)} does not stand whole hours from {quote(hours[0])} in row {rows[0]}"
            raise _refuse(message, "give one row for each hour", row, shown)


def _zones(zones: list[int | None], rows: list[int], shown: str) -> list[int] | None:
    """The minutes ahead of universal time of all rows, or None where none tells them; raises Refused where some do."""
    if all(zone is None for zone in zones):
        return None
    for zone, row in zip(zones, rows, strict=True):
        if zone is None:
            raise _refuse("the time has no offset from universal time, as other rows have", "write -05:00", row, shown)
    return [zone for zone in zones if zone is not None]


def _refuse(message: str, hint: str, row: int, shown: str) -> Refused:
    return Refused(Problem(message, hint, file=shown, line=row))


Reader = Callable[[list[str]], tuple[str, str]]


def choose_reader(at: dict[str, int]) -> Reader | None:
    """How day and hour are taken from the cells of a row, by where the columns of time stand; None without a time."""
    if {"year", "month", "day", "hour"} <= at.keys():
        year, month, day, hour = (at[name] for name in ("year", "month", "day", "hour"))
        return lambda cells: (f"{cells[year]}-{cells[month]}-{cells[day]}", cells[hour])
    clock = at.get("time", at.get("hour"))
    whole = at.get("date", at.get("day"))
    if whole is not None and clock is not None:
        return lambda cells: (cells[whole], cells[clock])
    single = at.get("time", whole)
    if single is None:
        return None
    return lambda cells: (cells[single], "")
