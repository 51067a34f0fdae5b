"""A text to the typed value of a field: the one converter, for the fields of a file and for the keys of a calculation.

Whether a value may stand, as a choice and within its bounds, is asked of the rules of its section (`rules.py`). Those
load Cerberus, which takes longer than a whole sum from keys: so they stand apart, and a sum does without them.
"""

import re
from collections.abc import Callable
from fractions import Fraction
from functools import cache
from pathlib import PurePosixPath
from typing import TYPE_CHECKING, Any

from specgen.model.field import Field
from specgen.quantities.format import format_decimal
from specgen.quantities.parse import QuantityError, parse_number, parse_quantity
from specgen.quantities.quantity import Quantity, find_dimension
from specgen.quantities.units import APART

if TYPE_CHECKING:
    import datetime

# Digits are bounded, so that no text makes a number that takes hours to compute with.
DECIMAL = r"[+-]?(\d{1,15}(\.\d{0,15})?|\.\d{1,15})([eE][+-]?\d{1,2})?"
PARTS = r"[+-]?(\d{1,12}[ -])?\d{1,12}/\d{1,12}"
_DECIMAL, _PARTS = re.compile(DECIMAL), re.compile(PARTS)
_WORDS = {"yes": True, "true": True, "no": False, "false": False}
_COMPASS = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")
MOST_TEXT = 20_000


class InvalidValue(ValueError):
    """A text is no value of its field; `hint` says what would be right."""

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.message, self.hint = message, hint


def convert(field: Field, text: str) -> Any:
    """The typed value of a text, of one entry for a field that holds a list; raises InvalidValue.

    A choice comes as the schema spells it; a text that is none of the choices comes back as it is, for the rules.
    """
    kind = field.of or field.kind
    if kind == "quantity":
        return _quantity(field, text)
    if kind == "choice":
        return _spellings(field.values).get(_folded(text), text)
    return _CONVERTERS[kind](text)


def with_unit(text: str, unit: str) -> str:
    """A bare number with a unit behind it; any other text as it is."""
    return f"{text} {unit}" if _DECIMAL.fullmatch(text.strip()) or _PARTS.fullmatch(text.strip()) else text


def _quantity(field: Field, text: str) -> Quantity:
    dimension = find_dimension(field.dimension, field.unit_ip)
    units = (field.unit_ip,) if field.unit_ip == field.unit_si else (field.unit_ip, field.unit_si)
    apart = dimension == "temperature_difference"
    try:
        # The trade writes a difference of temperatures in plain degrees: its zero is not that of the scale.
        value = parse_quantity(text, "temperature" if apart else dimension, units)
    except QuantityError as error:
        raise InvalidValue(error.message, error.hint) from None
    return Quantity.of(value.to(value.unit), value.unit + APART) if apart else value


@cache
def _spellings(choices: tuple[str, ...]) -> dict[str, str]:
    return {_folded(choice): choice for choice in choices}


def _folded(choice: str) -> str:
    """A choice whatever its capitals, with underscores for blanks and hyphens."""
    return choice.strip().lower().replace(" ", "_").replace("-", "_")


def _number(text: str) -> int | Fraction:
    plain = text.strip()
    if _DECIMAL.fullmatch(plain):
        number = Fraction(plain)
    elif _PARTS.fullmatch(plain):
        number = _parts(plain)
    else:
        raise InvalidValue(f"{text!r} is no number", "write a bare number, without a unit")
    return int(number) if number.denominator == 1 else number


def _parts(text: str) -> Fraction:
    """The number of `3/4` or `1-1/2`; a dash before it is its sign, one inside joins a whole and its fraction."""
    try:
        number = parse_number(text.lstrip("+-"))
    except QuantityError as error:
        raise InvalidValue(error.message, error.hint) from None
    return -number if text.startswith("-") else number


def _integer(text: str) -> int:
    number = _number(text)
    if not isinstance(number, int):
        raise InvalidValue(f"{text!r} is no whole number", "write a whole number")
    return number


def _percent(text: str) -> int | Fraction:
    """The percents of `65`, `65%` or `65 %`; a bare number below 1 may be meant as a share, and is asked back."""
    plain = text.strip()
    number = _number(plain.removesuffix("%").strip())
    if 0 < number < 1 and not plain.endswith("%"):
        share = format_decimal(number * 100, 6)
        raise InvalidValue(f"{text!r} may be a share or a percentage", f"write {share}% or {plain}%")
    return number


def _yes_no(text: str) -> bool:
    if text.lower() not in _WORDS:
        raise InvalidValue(f"{text!r} is neither yes nor no", "write yes or no")
    return _WORDS[text.lower()]


def _date(text: str) -> "datetime.date":
    import datetime  # here, for no sum from keys has a date, and each would wait for its calendar

    try:
        if not re.fullmatch(r"\d{4}-\d\d-\d\d", text):
            raise ValueError
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise InvalidValue(f"{text!r} is no date", "write year-month-day, such as 2027-03-01") from None


def _time(text: str) -> "datetime.time":
    import datetime

    if not re.fullmatch(r"([01]?\d|2[0-3]):[0-5]\d", text):
        raise InvalidValue(f"{text!r} is no time of day", "write hours and minutes, such as 06:30")
    hours, minutes = text.split(":")
    return datetime.time(int(hours), int(minutes))


def _text(text: str) -> str:
    if len(text) > MOST_TEXT:
        raise InvalidValue(f"the text is longer than {MOST_TEXT} characters", "put it in a paper and name that")
    return text


def _file(text: str) -> str:
    path = PurePosixPath(text)
    if path.is_absolute() or ".." in path.parts or "\\" in text or ":" in text:
        raise InvalidValue(f"{text!r} leaves the project folder", "write a path inside the folder of the project file")
    return text


def _bearing(text: str) -> Quantity:
    name = text.strip().upper()
    if name in _COMPASS:
        return Quantity(Fraction(_COMPASS.index(name) * 45, 2), "angle", "deg", name)
    try:
        angle = parse_quantity(with_unit(text, "deg"), "angle", ("deg",))
    except QuantityError:
        raise InvalidValue(f"{text!r} is no compass point", "write N, NNE, NE ... or degrees from north") from None
    if not 0 <= angle.amount <= 360:
        raise InvalidValue(f"{text!r} lies outside 0 to 360 degrees", "write degrees from north, clockwise")
    return angle


_CONVERTERS: dict[str, Callable[[str], Any]] = {
    "integer": _integer,
    "number": _number,
    "percent": _percent,
    "yes_no": _yes_no,
    "date": _date,
    "time": _time,
    "text": _text,
    "reference": _text,
    "file": _file,
    "bearing": _bearing,
}
