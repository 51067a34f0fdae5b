"""A stretch of time written with its unit where a field counts hours, days or months by a bare number.

Minutes, hours, days and weeks have a fixed size in each other, and so have months and years; between the two kinds no
figure is exact, so that it is asked back.
"""

import re
from fractions import Fraction
from math import ceil, floor
from typing import NamedTuple

from specgen.model.field import Field
from specgen.quantities.number import QuantityError, parse_number, plain_text, quote, tell_number

# Each unit in hours or in months; the first word is the one told.
_CLOCK = {"s": Fraction(1, 3600), "min": Fraction(1, 60), "h": Fraction(1), "d": Fraction(24), "week": Fraction(168)}
_CALENDAR = {"month": Fraction(1), "year": Fraction(12)}
_PLURALS = {"min": "minutes", "h": "hours", "d": "days", "month": "months", "year": "years"}
_WORDS = {
    "s": ("s", "sec", "secs", "second", "seconds"),
    "min": ("min", "mins", "minute", "minutes"),
    "h": ("h", "hr", "hrs", "hour", "hours"),
    "d": ("d", "day", "days", "calendar day", "calendar days"),
    "week": ("wk", "wks", "week", "weeks"),
    "month": ("mo", "mos", "mth", "month", "months"),
    "year": ("y", "yr", "yrs", "year", "years"),
}
_UNITS = {word: unit for unit, words in _WORDS.items() for word in words}
_PART = re.compile(r"([\d./ ]*\d(?: *- *\d+/\d+)?)[ -]*([a-z][a-z ]*?)\.?(?: *(?:,|and) *| +(?=\d)|$)")
# `min` behind a figure is minutes here, and not a minimum.
_MINUTES = re.compile(r"(?<=\d)[ -]*min\b\.?", re.IGNORECASE)


class Told(NamedTuple):
    """What is wrong with a text, and what would be right."""

    message: str
    hint: str


def counts_time(field: Field) -> str:
    """What a bare number of a field counts, such as `hours`; empty where it does not count time."""
    return _PLURALS.get(field.unit_ip, "") if field.kind in ("number", "integer") else ""


def spell_minutes(text: str) -> str:
    """A text in which `min` behind a figure is spelled out, so that nobody reads it as a minimum."""
    return _MINUTES.sub(" minutes", text)


def names_time(word: str) -> bool:
    """Whether a word is a unit of time."""
    return word.lower().rstrip(".") in _UNITS


def tell_time(field: Field, text: str) -> Told | None:
    """What is told of a stretch of time in a field that counts it; None for any other text."""
    parts = _split(plain_text(text).lower())
    if not parts:
        return None
    counted, number = counts_time(field), _count(field, parts)
    if number is None:
        return Told(f"{quote(text)} is not a fixed number of {counted}", f"write the bare number of {counted}")
    if field.kind == "integer" and number.denominator > 1:
        ends = f"{floor(number)} or {ceil(number)}"
        return Told(f"{quote(text)} is not a whole number of {counted}", f"write {ends}, the bare number of {counted}")
    if _lies_outside(field, number):
        message = f"{quote(text)} is {_write(number)} {counted}, outside the range of this field"
        return Told(message, f"write the bare number of {counted}, {field.least} to {field.most}")
    hint = f"write {_write(number)}, the bare number of {counted}, without a unit"
    return Told(f"{quote(text)} is not a number", hint)


def write_time(field: Field, text: str) -> str:
    """The bare number that a field may take for a stretch of time; empty where it is none, or not exactly."""
    number = _count(field, _split(plain_text(text).lower()))
    fits = number is not None and not _lies_outside(field, number)
    return _write(number) if number is not None and fits and (field.kind == "number" or number == int(number)) else ""


def _count(field: Field, parts: list[tuple[Fraction, str]]) -> Fraction | None:
    """The sum of stretches of time in the unit of a field; None where there is none, or no fixed size of it."""
    scale = _CLOCK if field.unit_ip in _CLOCK else _CALENDAR
    if not parts or any(unit not in scale for _, unit in parts):
        return None
    return sum((number * scale[unit] for number, unit in parts), Fraction(0)) / scale[field.unit_ip]


def _split(text: str) -> list[tuple[Fraction, str]]:
    """The numbers of a text with their units of time; none where anything else stands in it."""
    parts: list[tuple[Fraction, str]] = []
    at = 0
    while at < len(text):
        found = _PART.match(text, at)
        if found is None or found[2] not in _UNITS:
            return []
        try:
            parts.append((parse_number(found[1]), _UNITS[found[2]]))
        except QuantityError:
            return []
        at = found.end()
    return parts


def _lies_outside(field: Field, number: Fraction) -> bool:
    return bool(field.least and number < Fraction(field.least) or field.most and number > Fraction(field.most))


def _write(number: Fraction) -> str:
    """A number as it is typed: decimal where that is short and exact, else as a fraction."""
    exact = 1000 % number.denominator == 0
    return f"{float(number):.3f}".rstrip("0").rstrip(".") if exact else tell_number(number)
