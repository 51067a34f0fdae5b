"""A moment and a shift as keys of calculations: local time, as ISO 8601 and the clock write it."""

import re
from datetime import date, datetime, time, timedelta
from typing import NamedTuple

from specgen.model.calendar import DAY
from specgen.quantities.number import quote
from specgen.reading.conversion import InvalidValue

_MOMENT = re.compile(
    r"([0-9]{4}-[0-9]{2}-[0-9]{2})(?:[T ]([0-9]{2}:[0-9]{2}(?::[0-9]{2})?)(Z|[+-][0-9]{2}:?[0-9]{2})?)?"
)
_DAY_FIRST = re.compile(r"(.*\d)[T ,]+(\d{1,2}[:.]?\d{0,2} *(?:[ap]\.?m\.?)?)", re.IGNORECASE)
_BETWEEN = re.compile(r" *(?:-|\N{EN DASH}|\N{EM DASH}|to|until) *", re.IGNORECASE)
_CLOCK = re.compile(r"([0-9]{2}):([0-9]{2})")
_LOOSE = re.compile(r"(\d{1,2}?)[:.h]?(\d{2})? *(?:([ap])\.?m?\.?|h|hrs?)?", re.IGNORECASE)
_MINUTES_OF_DAY = 24 * 60


class ShiftTimes(NamedTuple):
    """The start of a shift and its length; one that ends as it begins goes round the clock."""

    start: time
    length: timedelta


def read_moment(text: str) -> datetime:
    """A day with a time of day; raises InvalidValue for any other text, and where an offset stands behind it."""
    found = _MOMENT.fullmatch(text.strip())
    try:
        if found is None or found[2] is None:
            raise ValueError
        moment = datetime.fromisoformat(f"{found[1]}T{found[2]}")
    except ValueError:
        raise InvalidValue(f"{quote(text)} is not a day with a time", _guess_moment(text)) from None
    if found[3]:
        raise InvalidValue(f"{quote(text)} has an offset from UTC", f"write the local time, {tell_moment(moment)}")
    return moment


def _guess_moment(text: str) -> str:
    from specgen.reading.date_words import read_dates  # imported here: most moments are right

    parted = _DAY_FIRST.fullmatch(text.strip())
    if parted and parted[2].strip() in ("24:00", "24") and (ends := read_dates(parted[1])):
        return f"write {' or '.join(f'{day + timedelta(days=1)}T00:00' for day in ends)}"
    days = read_dates(parted[1]) if parted else read_dates(text.strip())
    at = _read_loosely(parted[2]) if parted else None
    clock = "15:00" if at is None else _write(at)
    meant = " or ".join(f"{day.isoformat()}T{clock}" for day in days)
    return f"write {meant}" if meant else "write year-month-day and hours, such as 2026-07-02T15:00"


def tell_moment(moment: datetime) -> str:
    """A moment as ISO 8601, without seconds where there are none."""
    return moment.isoformat(timespec="seconds" if moment.second else "minutes")


def read_day(text: str) -> date:
    """A day; raises InvalidValue for any other text."""
    from specgen.model.field import Field
    from specgen.reading.conversion import convert

    day: date = convert(Field(path=("start",), label="start", kind="date"), text.strip())
    return day


def read_shift(text: str) -> ShiftTimes:
    """A shift from one time of day to another, past midnight where that is earlier; raises InvalidValue."""
    ends = text.strip().split("-")
    times = [_read_clock(end) for end in ends]
    start, end = times if len(times) == 2 else (None, None)  # method's own: a shift has two ends
    if start is None or end is None or start == _MINUTES_OF_DAY:
        raise InvalidValue(f"{quote(text)} is not a shift", _guess_shift(text))
    length = timedelta(minutes=(end - start) % _MINUTES_OF_DAY) or DAY
    return ShiftTimes(time(start // 60, start % 60), length)


def _guess_shift(text: str) -> str:
    ends = [_read_loosely(end) for end in _BETWEEN.split(text.strip())]
    start, end = ends if len(ends) == 2 else (None, None)  # method's own: a shift has two ends
    if start is not None and end is not None:
        return f"write {_write(start % _MINUTES_OF_DAY)}-{_write(end)}"
    return "write start and end, such as 07:00-15:30"


def _read_clock(text: str) -> int | None:
    """Minutes after midnight of `07:00`, up to `24:00`; None for any other text."""
    found = _CLOCK.fullmatch(text)
    return None if found is None else _count(int(found[1]), int(found[2]))


def _read_loosely(text: str) -> int | None:
    """Minutes after midnight of `7`, `7:00`, `0700`, `3:30 pm`; None where it is no time of day."""
    found = _LOOSE.fullmatch(text.strip())
    if found is None:
        return None
    hours, minutes, half = int(found[1]), int(found[2] or 0), (found[3] or "").lower()
    if half and not 1 <= hours <= 12:
        return None
    return _count(hours % 12 + 12 * (half == "p") if half else hours, minutes)


def _count(hours: int, minutes: int) -> int | None:
    total = hours * 60 + minutes
    return total if minutes < 60 and total <= _MINUTES_OF_DAY else None


def _write(minutes: int) -> str:
    return f"{minutes // 60:02}:{minutes % 60:02}"
