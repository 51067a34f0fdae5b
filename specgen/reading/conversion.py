"""A text to the typed value of a field: the one converter, and one reused validator for the bounds."""

import datetime
import re
from collections.abc import Callable
from fractions import Fraction
from functools import cache, lru_cache
from pathlib import PurePosixPath
from typing import Any

from cerberus import Validator, errors

from specgen.model.field import Field
from specgen.model.suggest import near_hint
from specgen.quantities.parse import QuantityError, parse_quantity
from specgen.quantities.quantity import Quantity, dimension_of

_NUMBER = re.compile(r"[+-]?(\d{1,15}(\.\d{0,15})?|\.\d{1,15})([eE][+-]?\d{1,2})?")
_WORDS = {"yes": True, "true": True, "no": False, "false": False}
_COMPASS = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")
MOST_TEXT = 20_000


class Unfit(ValueError):
    """A text does not fit its field; `hint` says what would be right."""

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.message, self.hint = message, hint


@lru_cache(maxsize=100_000)
def fitted(made: Field, raw: str) -> tuple[Any, tuple[str, str] | None]:
    """The typed value of a text, or None with message and hint; a project repeats itself, so answers are kept."""
    kind = made.of or made.kind
    try:
        value = _coercion(made, kind)(raw)
    except Unfit as error:
        return None, (error.message, error.hint)
    if not (made.least or made.most) or kind == "bearing":
        return value, None
    _SPANS.least, _SPANS.most = (_bound(made, kind, bound) if bound else None for bound in (made.least, made.most))
    if not _SPANS.validate({"value": value}, normalize=False):
        return None, _said(_SPANS._errors[0], made, raw)
    return value, None


@cache
def _bound(made: Field, kind: str, bound: str) -> Any:
    return _coercion(made, kind)(bound)


class _Spans(Validator):  # type: ignore[misc]
    """One Cerberus validator whose bounds are set for each value: one for each field would cost a tenth of a start."""

    least: Any = None
    most: Any = None

    def _check_with_span(self, field: str, value: Any) -> None:
        if self.least is not None and value < self.least:
            self._error(field, "below")
        elif self.most is not None and value > self.most:
            self._error(field, "above")


_SPANS = _Spans({"value": {"check_with": "span"}})


def _coercion(made: Field, kind: str) -> Callable[[str], Any]:
    if kind == "quantity":
        dimension = dimension_of(made.dimension, made.unit_ip)
        return lambda text: _quantity(text, dimension, made)
    if kind == "choice" and made.values:
        return lambda text: _choice(text, made)
    return _COERCIONS[kind]


def _quantity(text: str, dimension: str, made: Field) -> Quantity:
    units = (made.unit_ip,) if made.unit_ip == made.unit_si else (made.unit_ip, made.unit_si)
    try:
        return parse_quantity(text, dimension, units)
    except QuantityError as error:
        raise Unfit(error.message, error.hint) from None


def _choice(text: str, made: Field) -> str:
    if text not in made.values:
        raise Unfit(f"{text!r} is no choice of this field", near_hint(text, made.values))
    return text


def _number(text: str) -> int | Fraction:
    if not _NUMBER.fullmatch(text):
        raise Unfit(f"{text!r} is no number", "write a bare number, without a unit")
    number = Fraction(text)
    return int(number) if number.denominator == 1 else number


def _integer(text: str) -> int:
    number = _number(text)
    if not isinstance(number, int):
        raise Unfit(f"{text!r} is no whole number", "write a whole number")
    return number


def _percent(text: str) -> int | Fraction:
    return _number(text.removesuffix("%").strip())


def _yes_no(text: str) -> bool:
    if text.lower() not in _WORDS:
        raise Unfit(f"{text!r} is neither yes nor no", "write yes or no")
    return _WORDS[text.lower()]


def _date(text: str) -> datetime.date:
    try:
        if not re.fullmatch(r"\d{4}-\d\d-\d\d", text):
            raise ValueError
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise Unfit(f"{text!r} is no date", "write year-month-day, such as 2027-03-01") from None


def _time(text: str) -> datetime.time:
    if not re.fullmatch(r"([01]?\d|2[0-3]):[0-5]\d", text):
        raise Unfit(f"{text!r} is no time of day", "write hours and minutes, such as 06:30")
    hours, minutes = text.split(":")
    return datetime.time(int(hours), int(minutes))


def _text(text: str) -> str:
    if len(text) > MOST_TEXT:
        raise Unfit(f"the text is longer than {MOST_TEXT} characters", "put it in a paper and name that")
    return text


def _file(text: str) -> str:
    path = PurePosixPath(text)
    if path.is_absolute() or ".." in path.parts or "\\" in text or ":" in text:
        raise Unfit(f"{text!r} leaves the project folder", "write a path inside the folder of the project file")
    return text


def _bearing(text: str) -> Quantity:
    name = text.strip().upper()
    if name in _COMPASS:
        return Quantity(Fraction(_COMPASS.index(name) * 45, 2), "angle", "deg", name)
    try:
        angle = parse_quantity(text if not _NUMBER.fullmatch(text) else f"{text} deg", "angle", ("deg",))
    except QuantityError:
        raise Unfit(f"{text!r} is no compass point", "write N, NNE, NE ... or degrees from north") from None
    if not 0 <= angle.amount <= 360:
        raise Unfit(f"{text!r} lies outside 0 to 360 degrees", "write degrees from north, clockwise")
    return angle


_COERCIONS: dict[str, Callable[[str], Any]] = {
    "integer": _integer,
    "number": _number,
    "percent": _percent,
    "yes_no": _yes_no,
    "date": _date,
    "time": _time,
    "text": _text,
    "choice": _text,
    "reference": _text,
    "file": _file,
    "bearing": _bearing,
}


def _said(error: errors.ValidationError, made: Field, raw: str) -> tuple[str, str]:
    """Message and hint of a Cerberus error in our words."""
    (side,) = error.info
    bound = made.least if side == "below" else made.most
    span = f"{made.least or 'less'} to {made.most or 'more'}"
    return f"{raw} lies {side} {bound} and looks like a slip of the pen", f"{span}; asked for: {made.why}"
