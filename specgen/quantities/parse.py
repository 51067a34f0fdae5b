"""Parses text as a quantity, in all the usual ways of writing lengths and other measures."""

import re
from difflib import get_close_matches
from fractions import Fraction
from functools import lru_cache

from specgen.quantities.format import format_inches
from specgen.quantities.number import (
    ANY_VULGAR,
    ImproperFraction,
    NumberRead,
    ask_comma,
    parse_number,
    plain_text,
    quote,
    read_number,
)
from specgen.quantities.number import QuantityError as QuantityError
from specgen.quantities.quantity import Quantity
from specgen.quantities.slips import find_slip
from specgen.quantities.units import SAME_UNITS, SPELLINGS, UNITS, find_unit

# What stands behind the feet of feet and inches.
_INCHES = re.compile(
    rf"\s*(?:'|ft\.?|feet|foot)\s*-?\s*((?:[\d.]|{ANY_VULGAR}).*?)\s*(?:\"|''|in\.?|inch|inches)", re.ASCII
)
_R_VALUE = re.compile(r"(R|RSI)\s*-\s*(?=[\d.])(.*)", re.ASCII)
_FOOT = 12
# The measure that is written and the one that stands there.
_AREA_FOR_LENGTH = ("area_rate", "length_rate")
# None of a rate is none, in whatever unit it is measured.
_RATES = ("derate", "slope", "expansion")


class NoNumber(QuantityError):
    """The text begins with no number at all."""


class UnknownUnit(QuantityError):
    """What stands behind the number is not a unit of the dimension, or nothing."""


# A project writes the same few sizes again and again.
@lru_cache(maxsize=4096)
def parse_quantity(text: str, dimension: str, example_units: tuple[str, ...] = ()) -> Quantity:
    """The quantity written in `text`; `dimension` as in the field catalogue.

    `example_units` are offered where the unit is missing. Raises QuantityError.
    """
    dimension = SAME_UNITS.get(dimension, dimension)
    plain = plain_text(text)
    try:
        return _parse(text, plain, dimension, example_units)
    except (NoNumber, UnknownUnit):
        feet = "'" in plain or "ft" in example_units  # what is measured in inches or mils has none without their sign
        slip = find_slip(plain, lambda meant: _is_quantity(meant, dimension) and (feet or "'" not in meant))
        if slip is None:
            raise
        raise QuantityError(slip.message, slip.hint) from None


def _is_quantity(text: str, dimension: str) -> bool:
    try:
        return bool(_parse(text, text, dimension, ()))
    except QuantityError:
        return False


def _parse(text: str, plain: str, dimension: str, example_units: tuple[str, ...]) -> Quantity:
    resistance = _R_VALUE.fullmatch(plain)
    if resistance and dimension == "thermal_resistance":
        return _build_quantity(parse_number(resistance[2]), resistance[1], text)
    read = read_number(plain)
    if dimension in _RATES and plain == "0" and example_units:
        return _build_quantity(Fraction(0), example_units[0], text)
    if read is None:
        raise NoNumber(f"{quote(text)} is not a quantity", _suggest_form(example_units))
    inches = _INCHES.fullmatch(read.behind)
    if inches and dimension == "length" and read.number.denominator == 1:
        return _build_quantity(_add_inches(text, plain, read, inches[1]), "in", text)
    unit = _parse_unit(read.behind.strip(), text, dimension, example_units)
    # Inches and pounds are written with a comma between thousands; in metric work it is as often the decimal sign.
    if read.decimal_too and UNITS[unit].system != "ip":
        raise ask_comma(text, read)
    return _build_quantity(read.number, unit, text)


def parse_any_quantity(text: str) -> Quantity:
    """The quantity written in `text`, whatever its dimension; raises QuantityError."""
    plain = plain_text(text)
    resistance = _R_VALUE.fullmatch(plain)
    read = None if resistance else read_number(plain)
    name = SPELLINGS.get(resistance[1] if resistance else read.behind.strip() if read else "")
    if name is None:
        raise QuantityError(f"{quote(text)} is not a quantity with a known unit")
    return parse_quantity(text, UNITS[name].dimension)


def _add_inches(text: str, plain: str, feet: NumberRead, inches: str) -> Fraction:
    """Feet and inches in inches; raises QuantityError where another length may be meant, with both."""
    sign, whole = "-" if plain.startswith("-") else "", _FOOT * abs(feet.number)
    # A sign between thousands looks like that of feet.
    thousands = re.match(r"'\d{3}\b", feet.behind, re.ASCII)
    try:
        behind = parse_number(inches)
    except ImproperFraction as improper:
        wanted = [_tell_feet(whole + reading) for reading in improper.readings]
    else:
        if behind < _FOOT and not thousands:
            return -(whole + behind) if sign else whole + behind
        # What is left where a digit is one too many, or a digit of thousands.
        first = f"{abs(feet.number)}{inches} in" if thousands else _tell_feet(whole + int(inches[0]))
        wanted = [first, _tell_feet(whole + behind)]
    hint = f"write {' or '.join(f'{sign}{reading}' for reading in wanted)}"
    fault = "can be read in two ways" if thousands else "are 12 or more"
    raise QuantityError(f"the inches after the feet of {quote(text)} {fault}", hint)


def _tell_feet(inches: Fraction) -> str:
    return f"{inches // _FOOT}'-{format_inches(inches % _FOOT)}\""


def _parse_unit(unit: str, text: str, dimension: str, example_units: tuple[str, ...]) -> str:
    if not unit:
        raise UnknownUnit(f"{quote(text)} has no unit", _suggest_form(example_units, text.strip()))
    # A hyphen joins number and unit: an 8-in board.
    name = find_unit(unit[1:] if re.match("-[a-zA-Z]", unit) else unit)
    if name and (UNITS[name].dimension, dimension) == _AREA_FOR_LENGTH:
        # No figure follows from the other, so that a near unit would be a wrong one.
        raise UnknownUnit(f"{quote(text)} is an area in an hour, not a length in an hour", "write 45 ft/h or 14 m/h")
    if name is None or UNITS[name].dimension != dimension:
        known = [u for u, row in UNITS.items() if row.dimension == dimension]
        near = get_close_matches(unit, known, 1)
        hint = f"did you mean {near[0]}?" if near else f"write one of: {', '.join(known)}"
        wrong = (
            f"{quote(unit)} is not a unit of {dimension.replace('_', ' ')}"
            if name
            else f"unit {quote(unit)} is not known"
        )
        raise UnknownUnit(wrong, hint)
    return str(name)


def _suggest_form(units: tuple[str, ...], number: str = "40") -> str:
    return "write " + " or ".join(f"{number} {unit}" for unit in units) if units else "write a number and its unit"


def _build_quantity(number: Fraction, unit: str, text: str) -> Quantity:
    quantity = Quantity.of(number, unit)
    return Quantity(quantity.amount, quantity.dimension, unit, text.strip())
