"""Figures of calculations as people write them: few digits, trade fractions, units of the trade.

Only what a page prints is rounded; sums, `calc` and its data carry every digit.
"""

import re
from fractions import Fraction
from math import ceil, floor

from specgen.documents.no_break import MINUS, sign_figure
from specgen.model.capacity import NOTHING_LEFT, Comparison
from specgen.model.working import DEGREES
from specgen.quantities.comparison import Outcome, Sense
from specgen.quantities.format import format_decimal, format_quantity, format_unit, raise_power
from specgen.quantities.quantity import Quantity
from specgen.quantities.units import UNITS

DIGITS, VERDICT_DIGITS, CONSTANT_DIGITS, MOST_DIGITS = 4, 3, 5, 12
# Pascals in an inch of mercury, conventional: NIST SP 811, appendix B.8.
INCH_OF_MERCURY = 3386.389
_AREAS = ("ft2", "m2")
# Results of a method in SI, as an inch-pound set tells them.
_IN_POUNDS = {"W/m2": "Btu/h.ft2"}
SIXTY_FOURTHS = 64  # of an inch: what prints as a fraction
_POWER = re.compile(r"\d(?:\.\d+)?e-?\d+")
SIGNS = {(Sense.AT_MOST, False): "≤", (Sense.AT_MOST, True): "<", (Sense.AT_LEAST, False): "≥"}


def figure(value: float, digits: int = DIGITS) -> str:
    """A number as a page shows it, with up to four significant digits."""
    return raise_power(format_decimal(value, digits))


def name_unit(unit: str, system: str) -> str:
    """The unit as the trade of a unit system names it: centistokes in an inch-pound set."""
    return "cSt" if unit == "mm2/s" and system == "ip" else format_unit(unit)


def measure(value: float, unit: str, system: str = "ip", digits: int = DIGITS) -> str:
    """A number with its unit: `3/4 in`, `R-15.4`, `24.3 psf`."""
    name = name_unit(unit, system)
    if unit != "d" and unit in UNITS and name == format_unit(unit):
        quantity = Quantity.of(repr(float(value)), unit)
        exact = float(value * (SIXTY_FOURTHS if unit == "in" else 1)).is_integer()
        # A constant of the method, with more digits, prints as formulas show it: no face is read by it.
        places, most = (1, digits) if digits <= DIGITS else (None, DIGITS)
        shown = format_decimal(float(value), *((most, places) if unit in DEGREES else (digits,)))
        rounded = quantity if exact else Quantity.of(shown, unit)
        text = _POWER.sub(lambda power: raise_power(power[0]), format_quantity(rounded, unit))
        return sign_figure(text.replace(" ", "\u00a0"))
    if unit == "d":
        return sign_figure(f"{figure(value, digits)}\u00a0day{'' if value == 1 else 's'}")
    joint = "" if name in ("", "%") else "\u00a0"
    return sign_figure(f"{figure(value, digits)}{joint}{name}")


def settle(value: float, unit: str, system: str) -> str:
    """A result with its unit: a temperature to a tenth, an area to four digits, anything else to three."""
    if system == "ip" and unit in _IN_POUNDS:
        value, unit = float(value * UNITS[unit].factor / UNITS[_IN_POUNDS[unit]].factor), _IN_POUNDS[unit]
    if not _in_tenths(unit):
        return measure(value, unit, system, DIGITS if unit in _AREAS else VERDICT_DIGITS)
    return measure(float(_to_tenths(Fraction(repr(float(value))), unit)), unit, system)


def _in_tenths(unit: str) -> bool:
    return unit in UNITS and UNITS[unit].dimension.startswith("temperature")


def _to_tenths(value: Fraction, unit: str) -> Fraction:
    """A temperature with halves up, a margin with halves down: it is the difference of what prints beside it."""
    half = Fraction(1, 2)
    return Fraction(ceil(value * 10 - half) if unit.endswith(" apart") else floor(value * 10 + half), 10)


def vapor_pressure(pascals: float, system: str) -> str:
    """A vapor pressure by itself, in inches of mercury or in pascals."""
    return figure(pascals / INCH_OF_MERCURY if system == "ip" else pascals, VERDICT_DIGITS)


def vapor_unit(system: str) -> str:
    """The unit of vapor pressures in a unit system."""
    return "in.\u00a0Hg" if system == "ip" else "Pa"


def demand_and_limit(comparison: Comparison, system: str) -> tuple[str, str]:
    """Both sides of a comparison, with as many digits as keep their order."""
    if comparison.words[0]:
        return comparison.words
    if not isinstance(comparison.demand, Quantity) or not isinstance(comparison.limit, Quantity):
        return str(comparison.demand), str(comparison.limit)
    unit = comparison.demand.unit
    unit = _IN_POUNDS.get(unit, unit) if system == "ip" else unit
    sides = comparison.demand.to(unit), comparison.limit.to(unit)
    if unit == "Pa" and system == "ip":
        sides = sides[0] / Fraction(INCH_OF_MERCURY), sides[1] / Fraction(INCH_OF_MERCURY)
    digits = _digits_apart(*sides)
    tenths = [_to_tenths(side, unit) for side in sides]
    if _in_tenths(unit) and (tenths[0] < tenths[1], tenths[0] > tenths[1]) == (
        sides[0] < sides[1],
        sides[0] > sides[1],
    ):
        first, last = (settle(float(side), unit, system) for side in sides)
    elif unit == "Pa":
        first, last = (f"{format_decimal(side, digits)}\u00a0{vapor_unit(system)}" for side in sides)
    else:
        first, last = (measure(float(side), unit, system, digits) for side in sides)
    return first, last


def _digits_apart(first: Fraction, last: Fraction) -> int:
    """The fewest digits, three or more, that print two numbers in their order."""
    for digits in range(VERDICT_DIGITS, MOST_DIGITS):
        shown = [Fraction(format_decimal(side, digits)) for side in (first, last)]
        if (first < last, first > last) == (shown[0] < shown[1], shown[0] > shown[1]):
            return digits
    return MOST_DIGITS


def tell_ratio(comparison: Comparison) -> str:
    """The ratio of demand to capacity, or the margin where a ratio says nothing."""
    ratio = comparison.ratio
    if ratio is not None and ratio >= NOTHING_LEFT:
        return "none left"
    if ratio is not None:
        return _tell_number(ratio, comparison.outcome)
    assert isinstance(comparison.demand, Quantity)
    assert isinstance(comparison.limit, Quantity)
    apart = abs((comparison.limit - comparison.demand).amount)
    sign = MINUS if comparison.outcome is Outcome.OUTSIDE and apart else ""
    return f"{sign}{_tell_apart(apart, comparison.demand.unit)}"


def _tell_apart(apart: Fraction, unit: str) -> str:
    if unit == "d":
        return measure(float(apart / UNITS["d"].factor), "d")
    scale = unit.removesuffix(" apart")
    number, between = apart / UNITS[scale].factor, f"{scale} apart"
    if _to_tenths(number, between) > 0:
        return settle(float(number), between, "ip")
    return measure(float(number), between, digits=VERDICT_DIGITS)


def _tell_number(ratio: Fraction, outcome: Outcome) -> str:
    """Two decimals, more where fewer would set a ratio beyond one at one."""
    places = 2
    while (
        outcome is Outcome.OUTSIDE and ratio > 1 and float(f"{float(ratio):.{places}f}") <= 1 and places < MOST_DIGITS
    ):
        places += 1
    return f"{float(ratio):.{places}f}"
