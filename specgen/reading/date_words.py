"""Dates as people write them (`3/4/2027`, `March 4, 2027`, `4-Mar-27`): not taken, but told in the form that is."""

import datetime
import re
from collections.abc import Iterator

from specgen.model.dates import MONTHS

_NAME = r"(?P<name>[a-z]{3,9})\.?"
_DAY, _YEAR = r"(?P<day>\d{1,2})(?:st|nd|rd|th)?", r"(?P<year>\d{4}|'?\d{2})"
_NAMED = (
    re.compile(rf"(?:[a-z]{{3,9}},? )?{_NAME}[ -]*{_DAY}(?:, ?| |-){_YEAR}"),
    re.compile(rf"(?:[a-z]{{3,9}},? )?{_DAY}(?:,? |-|\.)(?:of )?{_NAME}(?:, ?| |-){_YEAR}"),
    re.compile(rf"{_YEAR}[ -]{_NAME}[ -]{_DAY}"),
)
_YEAR_FIRST = re.compile(r"(\d{4})([-/. ]?)(\d{1,2})\2(\d{1,2})")
_YEAR_LAST = re.compile(r"(\d{1,2})([-/. ])(\d{1,2})\2(\d{4}|\d{2})")
_CENTURY = 2000  # of a year of two digits


def read_dates(text: str) -> tuple[datetime.date, ...]:
    """The dates a text may mean, that with the month first before the other; none where it is no date."""
    return tuple(dict.fromkeys(_read(" ".join(text.lower().split()))))


def _read(text: str) -> Iterator[datetime.date]:
    if found := _YEAR_FIRST.fullmatch(text):
        yield from _build(found[1], found[3], found[4])
    elif found := _YEAR_LAST.fullmatch(text):
        yield from _build(found[4], found[1], found[3])
        yield from _build(found[4], found[3], found[1])
    for form in _NAMED:
        named = form.fullmatch(text)
        if named is not None and named["name"][:3] in MONTHS:
            yield from _build(named["year"].lstrip("'"), str(MONTHS.index(named["name"][:3]) + 1), named["day"])


def _build(year: str, month: str, day: str) -> Iterator[datetime.date]:
    """The date of a year, month and day; none where the calendar has no such day."""
    try:
        yield datetime.date(int(year) + (_CENTURY if len(year) == 2 else 0), int(month), int(day))
    except ValueError:
        return
