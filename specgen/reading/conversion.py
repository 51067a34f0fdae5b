"""Converts a text to the typed value of a field: the one converter, for fields of files and keys of calculations.

Choices and bounds are checked by the rules of the section (`rules.py`). Those load Cerberus, which takes longer than a
whole calculation from keys; so they are kept apart, and a calculation does without them.
"""

import re
from collections.abc import Callable
from fractions import Fraction
from pathlib import PurePosixPath
from typing import TYPE_CHECKING, Any

from specgen.model.field import Field
from specgen.quantities.number import QuantityError, is_number, parse_number
from specgen.quantities.parse import NoNumber, parse_quantity
from specgen.quantities.quantity import Quantity, find_dimension
from specgen.quantities.units import APART
from specgen.reading.choices import find_choice
from specgen.reading.plain_words import NOT_KNOWN_YET, says_not_known

if TYPE_CHECKING:
    import datetime

_WORDS = {"yes": True, "true": True, "no": False, "false": False}
_COMPASS = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")
_POINTS, _PARTED = re.compile("NORTH|EAST|SOUTH|WEST"), str.maketrans("", "", " -_")
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
    try:
        return _convert(field, text)
    except InvalidValue as invalid:
        if says_not_known(text):
            raise InvalidValue(invalid.message, NOT_KNOWN_YET) from None
        raise


def _convert(field: Field, text: str) -> Any:
    kind = field.of or field.kind
    if kind == "quantity":
        return _quantity(field, text)
    if kind == "choice":
        return find_choice(field, text)
    if kind in _NUMBERS:
        return _NUMBERS[kind](field, text)
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
    except NoNumber as error:
        example = f"write a number and its unit, such as {field.example}"
        raise InvalidValue(error.message, example if field.example else error.hint) from None
    except QuantityError as error:
        raise InvalidValue(error.message, error.hint) from None
    return Quantity.of(value.to(value.unit), value.unit + APART) if apart else value


def _number(field: Field, text: str) -> int | Fraction:
    try:
        number = parse_number(text)
    except QuantityError as error:
        from specgen.reading.number_words import explain_number  # imported here: most numbers are right

        raise InvalidValue(*explain_number(field, text, error)) from None
    return int(number) if number.denominator == 1 else number


def _integer(field: Field, text: str) -> int:
    number = _number(field, text)
    if not isinstance(number, int):
        raise InvalidValue(f"{text!r} is not a whole number", "write a whole number")
    return number


def _percent(field: Field, text: str) -> int | Fraction:
    """The percentage of `65`, `65%` or `65 %`; a bare number below 1 may be meant as a share and is refused."""
    plain = text.strip()
    number = _number(field, plain.removesuffix("%").strip())
    if 0 < number < 1 and not plain.endswith("%"):
        from specgen.reading.number_words import tell_percent

        raise InvalidValue(*tell_percent(plain, Fraction(number)))
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
        from specgen.reading.date_words import read_dates

        meant = " or ".join(str(date) for date in read_dates(text))
        hint = f"write {meant}" if meant else "write year-month-day, such as 2027-03-01"
        raise InvalidValue(f"{text!r} is not a date", hint) from None


def _time(text: str) -> "datetime.time":
    import datetime

    if not re.fullmatch(r"([01]?[0-9]|2[0-3]):[0-5][0-9]", text):
        raise InvalidValue(f"{text!r} is not a time of day", "write hours and minutes, such as 06:30")
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
        raise InvalidValue(f"{name!r} names a folder", "write the name of a file, without a slash after it")
    return name


def read_bearing(text: str) -> Quantity:
    """A compass point or degrees from north, as an angle; raises InvalidValue."""
    name = _POINTS.sub(lambda word: word[0][0], text.strip().upper())
    name = name.translate(_PARTED) if name != text.strip().upper() else name
    if name in _COMPASS:
        return Quantity(Fraction(_COMPASS.index(name) * 45, 2), "angle", "deg", name)
    try:
        angle = parse_quantity(with_unit(text, "deg"), "angle", ("deg",))
    except QuantityError:
        raise InvalidValue(f"{text!r} is not a compass point", "write N, NNE, NE ... or degrees from north") from None
    if not 0 <= angle.amount <= 360:
        raise InvalidValue(f"{text!r} lies outside 0 to 360 degrees", "write degrees from north, clockwise")
    return angle


_NUMBERS: dict[str, Callable[[Field, str], Any]] = {"integer": _integer, "number": _number, "percent": _percent}
_CONVERTERS: dict[str, Callable[[str], Any]] = {
    "yes_no": _yes_no,
    "date": _date,
    "time": _time,
    "text": _text,
    "reference": _text,
    "file": _file,
    "bearing": read_bearing,
}
