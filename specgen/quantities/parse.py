"""Parses text as a quantity, in all the usual ways of writing lengths and other measures."""

import re
from difflib import get_close_matches
from fractions import Fraction
from functools import lru_cache

from specgen.quantities.quantity import Quantity
from specgen.quantities.units import SAME_UNITS, SPELLINGS, UNITS, find_unit

# Signs of typesetting that stand for plain ones: primes and quotes, fraction slashes, dashes, spaces.
_MARKS = str.maketrans(
    dict.fromkeys("’‘′ʹ", "'")
    | dict.fromkeys("“”″〃", '"')
    | dict.fromkeys("⁄∕", "/")
    | dict.fromkeys("−‐‑–—", "-")
    | dict.fromkeys("\xa0\u2009\u202f\u2007", " ")
)
_VULGAR = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅓": "1/3",
    "⅔": "2/3",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅙": "1/6",
    "⅚": "5/6",
    "⅕": "1/5",
    "⅖": "2/5",
    "⅗": "3/5",
    "⅘": "4/5",
    "⅒": "1/10",
}
_NUMBER = r"\d{0,12}\.\d{1,15}|\d{1,12}\.|\d{1,12}(?:[ -]\d{1,6}/\d{1,6}|/\d{1,6})?"
_VALUE = re.compile(rf"([+-]?)\s*({_NUMBER})(?:[eE]([+-]?\d{{1,9}}))?\s*(.*)", re.S)
_FEET_INCHES = re.compile(
    rf"([+-]?)\s*(\d{{1,9}})\s*(?:'|ft\.?|feet|foot)\s*-?\s*({_NUMBER})\s*(?:\"|''|in\.?|inch|inches)"
)
_R_VALUE = re.compile(r"(R|RSI)\s*-\s*(\d{1,6}(?:\.\d{1,9})?)")
_THOUSANDS = re.compile(r"(?<![\d.])(?!(?<!,)0)(\d{1,3}),(?=\d{3}(?!\d))")


class QuantityError(ValueError):
    """The text is not a quantity of the requested dimension; `hint` says what would be right."""

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.message, self.hint = message, hint


# A project writes the same few sizes again and again.
@lru_cache(maxsize=4096)
def parse_quantity(text: str, dimension: str, example_units: tuple[str, ...] = ()) -> Quantity:
    """The quantity written in `text`; `dimension` as in the field catalogue.

    `example_units` are offered where the unit is missing. Raises QuantityError.
    """
    dimension = SAME_UNITS.get(dimension, dimension)
    plain = _normalize(text)
    feet = _FEET_INCHES.fullmatch(plain)
    if feet and dimension == "length":
        inches = 12 * int(feet[2]) + parse_number(feet[3])
        return _build_quantity(-inches if feet[1] == "-" else inches, "in", text)
    resistance = _R_VALUE.fullmatch(plain)
    if resistance and dimension == "thermal_resistance":
        return _build_quantity(parse_number(resistance[2]), resistance[1], text)
    match = _VALUE.fullmatch(plain)
    if not match or len((match[3] or "").lstrip("+-")) > 2:
        raise QuantityError(f"{text!r} is no quantity", _suggest_form(example_units))
    number = parse_number(match[2]) * (-1 if match[1] == "-" else 1)
    if match[3]:
        number *= Fraction(10) ** int(match[3])
    return _build_quantity(number, _parse_unit(match[4].strip(), text, dimension, example_units), text)


def parse_any_quantity(text: str) -> Quantity:
    """The quantity written in `text`, whatever its dimension; raises QuantityError."""
    plain = _normalize(text)
    match = _R_VALUE.fullmatch(plain) or _VALUE.fullmatch(plain)
    word = match[match.lastindex or 0].strip() if match and match.re is _VALUE else match[1] if match else ""
    name = SPELLINGS.get(word)
    if name is None:
        raise QuantityError(f"{text!r} is no quantity with a known unit")
    return parse_quantity(text, UNITS[name].dimension)


def parse_number(text: str) -> Fraction:
    """The exact number of `3`, `0.75`, `3/4`, `1-1/2` or `1 1/2`; QuantityError for a zero divisor."""
    whole, _, part = text.replace("-", " ").rpartition(" ")
    try:
        return Fraction(int(whole or 0)) + Fraction(part.rstrip("."))
    except ZeroDivisionError:
        raise QuantityError(f"{text!r} divides by zero", "write a whole number of parts, such as 1/2") from None


def _normalize(text: str) -> str:
    if not text.isascii():
        text = text.translate(_MARKS)
        for sign, plain in _VULGAR.items():
            text = re.sub(rf"(\d)\s*{sign}", rf"\1 {plain}", text).replace(sign, plain)
    return _THOUSANDS.sub(r"\1", text).strip()


def _parse_unit(unit: str, text: str, dimension: str, example_units: tuple[str, ...]) -> str:
    if not unit:
        raise QuantityError(f"{text!r} has no unit", _suggest_form(example_units, text.strip()))
    name = find_unit(unit)
    if name is None or UNITS[name].dimension != dimension:
        known = [u for u, row in UNITS.items() if row.dimension == dimension]
        near = get_close_matches(unit, known, 1)
        hint = f"did you mean {near[0]}?" if near else f"write one of: {', '.join(known)}"
        wrong = f"{unit!r} is no unit of {dimension.replace('_', ' ')}" if name else f"unit {unit!r} is not known"
        raise QuantityError(wrong, hint)
    return str(name)


def _suggest_form(units: tuple[str, ...], number: str = "40") -> str:
    return "write " + " or ".join(f"{number} {unit}" for unit in units) if units else "write a number and its unit"


def _build_quantity(number: Fraction, unit: str, text: str) -> Quantity:
    quantity = Quantity.of(number, unit)
    return Quantity(quantity.amount, quantity.dimension, unit, text.strip())
