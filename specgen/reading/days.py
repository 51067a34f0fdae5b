"""A day as people write it, `11/20/2026`, `April 12, 2027`, `4-Mar-27`: read where only one day can be meant."""

import datetime
import re
from collections.abc import Iterator

from specgen.model.dates import MONTHS
from specgen.reading.conversion import InvalidValue

_NAMES = {"january", "february", "march", "april", "may", "june", "july", "august", "september", "october"}
_NAMES |= {"november", "december", "sept"}
_YEAR_FIRST = re.compile(r"(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})")
_YEAR_LAST = re.compile(r"(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4}|\d{2})")
_MONTH_FIRST = re.compile(r"([a-z]+)\.?[ -]*(\d{1,2})(?:st|nd|rd|th)?,?[ -]+(\d{4}|'?\d{2})")
_DAY_FIRST = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?[ -]*([a-z]+)\.?,?[ -]*(\d{4}|'?\d{2})")
_WEEKDAY = re.compile(r"^(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?[,.]* +")
_CENTURY, _FIRST_SHORT = 2000, 2020  # a year of two digits before it may be a day


def read_day(text: str, system: str) -> str:
    """The day as year-month-day; month before day only in a project in inches. Raises InvalidValue."""
    plain = _WEEKDAY.sub("", " ".join(text.lower().split()))
    found = sorted(set(_list_days(plain, system)))
    if len(found) == 1:
        return found[0].isoformat()
    if not found:
        raise InvalidValue(f"{text!r} is not a date", "write year-month-day, such as 2027-03-01")
    told = " or ".join(day.isoformat() for day in found)
    raise InvalidValue(f"the day and the month of {text!r} can be read in two ways", f"write {told}")


def _list_days(text: str, system: str) -> Iterator[datetime.date]:
    """The days that a text may mean."""
    if match := _YEAR_FIRST.fullmatch(text):
        yield from _make(match[1], int(match[2]), match[3])
    elif match := _MONTH_FIRST.fullmatch(text):
        yield from _make(match[3], _find_month(match[1]), match[2])
    elif match := _DAY_FIRST.fullmatch(text):
        yield from _make(match[3], _find_month(match[2]), match[1])
    elif match := _YEAR_LAST.fullmatch(text):
        american = list(_make(match[3], int(match[1]), match[2]))
        yield from american
        if system == "si" or not american:
            yield from _make(match[3], int(match[2]), match[1])


def _find_month(name: str) -> int:
    known = name in MONTHS or name in _NAMES
    return MONTHS.index(name[:3]) + 1 if known else 0


def _make(year: str, month: int, day: str) -> Iterator[datetime.date]:
    """The day, if there is such a one."""
    whole = int(year.lstrip("'"))
    if whole < 100:
        whole += _CENTURY
        if whole < _FIRST_SHORT:
            return
    try:
        yield datetime.date(whole, month, int(day))
    except ValueError:
        return
