"""Converts a text to the typed value of a field: the one converter, for fields of files and keys of calculations.

Choices and bounds are checked by the rules of the section (`rules.py`). Those load Cerberus, which takes longer than a
whole calculation from keys; so they are kept apart, and a calculation does without them.
"""

import re
from collections.abc import Callable
from fractions import Fraction
from functools import cache
from pathlib import PurePosixPath
from typing import TYPE_CHECKING, Any

from specgen.model.field import Field
from specgen.quantities.format import format_decimal
from specgen.quantities.number import QuantityError, is_number, parse_number
from specgen.quantities.parse import parse_quantity
from specgen.quantities.quantity import Quantity, find_dimension
from specgen.quantities.units import APART

if TYPE_CHECKING:
    import datetime

_WORDS = {"yes": True, "true": True, "no": False, "false": False}
_COMPASS = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")
# Of a text that may have several lines, and of any other, which stands in tables and messages.
MOST_TEXT, MOST_LINE = 20_000, 300


class InvalidValue(ValueError):
    """A text is not a valid value of its field; `hint` says what would be right."""

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.message, self.hint = message, hint


def convert(field: Field, text: str) -> Any:
    """The typed value of a text, or of one entry for a field that holds a list; raises InvalidValue.

    A choice is returned as the schema spells it; any other text is returned unchanged, for the rules to refuse.
    """
    kind = field.of or field.kind
    if kind == "quantity":
        return _quantity(field, text)
    if kind == "choice":
        return _spellings(field.values).get(_fold(text), text)
    if kind == "text" and field.lines:
        return _lines(text)
    return _CONVERTERS[kind](text)


def with_unit(text: str, unit: str) -> str:
    """A bare number with a unit behind it; any other text as it is."""
    return f"{text} {unit}" if is_number(text) else text


def _quantity(field: Field, text: str) -> Quantity:
    dimension = find_dimension(field.dimension, field.unit_ip)
    units = (field.unit_ip,) if field.unit_ip == field.unit_si else (field.unit_ip, field.unit_si)
    apart = dimension == "temperature_difference"
    try:
        # The trade writes a temperature difference in plain degrees, without the zero of the scale.
        value = parse_quantity(text, "temperature" if apart else dimension, units)
    except QuantityError as error:
        raise InvalidValue(error.message, error.hint) from None
    return Quantity.of(value.to(value.unit), value.unit + APART) if apart else value


@cache
def _spellings(choices: tuple[str, ...]) -> dict[str, str]:
    return {_fold(choice): choice for choice in choices}


def _fold(choice: str) -> str:
    """A choice in lower case, with underscores for blanks and hyphens."""
    return choice.strip().lower().replace(" ", "_").replace("-", "_")


def _number(text: str) -> int | Fraction:
    try:
        number = parse_number(text)
    except QuantityError as error:
        raise InvalidValue(error.message, error.hint) from None
    return int(number) if number.denominator == 1 else number


def _integer(text: str) -> int:
    number = _number(text)
    if not isinstance(number, int):
        raise InvalidValue(f"{text!r} is no whole number", "write a whole number")
    return number


def _percent(text: str) -> int | Fraction:
    """The percentage of `65`, `65%` or `65 %`; a bare number below 1 may be meant as a share and is refused."""
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
    import datetime  # imported here: no calculation from keys has a date

    try:
        if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
            raise ValueError
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise InvalidValue(f"{text!r} is no date", "write year-month-day, such as 2027-03-01") from None


def _time(text: str) -> "datetime.time":
    import datetime

    if not re.fullmatch(r"([01]?[0-9]|2[0-3]):[0-5][0-9]", text):
        raise InvalidValue(f"{text!r} is no time of day", "write hours and minutes, such as 06:30")
    hours, minutes = text.split(":")
    return datetime.time(int(hours), int(minutes))


def _lines(text: str) -> str:
    """Several lines; the line end behind a text written as a block is no part of it."""
    if len(text) > MOST_TEXT:
        raise InvalidValue(f"the text is longer than {MOST_TEXT} characters", "put it in a document and name that")
    return text.replace("\r\n", "\n").replace("\r", "\n").rstrip("\n")


def _text(text: str) -> str:
    line = text.rstrip("\r\n")
    if "\n" in line or "\r" in line:
        raise InvalidValue("this text has more than one line", "write it in one line")
    if len(line) > MOST_LINE:
        raise InvalidValue(
            f"the text is longer than {MOST_LINE} characters", "shorten it, or name a document that says it"
        )
    return line


def _file(text: str) -> str:
    name = _text(text)
    path = PurePosixPath(name)
    if path.is_absolute() or ".." in path.parts or "\\" in name or ":" in name:
        raise InvalidValue(f"{name!r} leaves the project folder", "write a path inside the folder of the project file")
    if name.endswith(("/", "/.")):
        raise InvalidValue(f"{name!r} names a folder", "write the name of a file, without a slash behind it")
    return name


def read_bearing(text: str) -> Quantity:
    """A compass point or degrees from north, as an angle; raises InvalidValue."""
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
    "bearing": read_bearing,
}
