"""Formats quantities as text: trade fractions in inches, both unit systems, the project's first."""

import re
from fractions import Fraction
from math import floor, log10

from specgen.quantities.quantity import Quantity
from specgen.quantities.units import UNITS

_PRINTED = {
    "F": "°F",
    "C": "°C",
    "F apart": "°F",
    "C apart": "°C",
    "ft2": "sq ft",
    "in2": "sq in",
    "m2": "m²",
    "um": "µm",
    "W/m2": "W/m²",
    "Btu/h.ft2": "Btu/(h·sq ft)",
    "W/(m2.K)": "W/(m²·K)",
    "Btu/(h.ft2.F)": "Btu/(h·sq ft·°F)",
    "mm2/s": "mm²/s",
    "oz/yd2": "oz/sq yd",
    "g/m2": "g/m²",
    "deg": "°",
    "in 100": "%",
    "ft2/gal": "sq ft/gal",
    "m2/L": "m²/L",
    "ft2/h": "sq ft/h",
    "m2/h": "m²/h",
    "/F": "/°F",
    "/C": "/°C",
    "ng/(Pa.s.m2)": "ng/(Pa·s·m²)",
    "RSI": "m²·K/W",
    "mph": "mph",
}
# A power behind a unit that is printed under no name of its own: m2, ft3, K4.
_POWER = re.compile(r"(?<![A-Za-z])(mm|m|ft|in|yd|K|s)([234])(?!\w)")
_RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
_LEAST_DIGITS, _MOST_DIGITS = 3, 5  # of feet beside meters
_DECIMALS = {"mm": 1, "F": 1, "C": 1, "F apart": 1, "C apart": 1, "kPa": 2, "m": 2, "psi": 1, "mph": 1, "m/s": 1}


def format_unit(unit: str) -> str:
    """The unit as a reader expects it on paper: `F` is printed °F."""
    return _PRINTED.get(unit) or _POWER.sub(lambda power: power[1] + "²³⁴"[int(power[2]) - 2], unit)


def format_quantity(quantity: Quantity, unit: str) -> str:
    """The quantity in `unit`, rounded as the trade writes it."""
    number = quantity.to(unit)
    if unit == "in":
        return f"{format_inches(number)} in"
    if unit == "ft":
        return _format_feet(number)
    if unit == "R":
        return f"R-{format_decimal(number, 3)}"
    exact = quantity.unit == unit
    text = format_decimal(number, 8 if exact else 3, None if exact else _DECIMALS.get(unit))
    joint = "" if unit in ("deg", "in 100") or unit.startswith("/") else " "
    return f"{text}{joint}{format_unit(unit)}"


def format_both(quantity: Quantity, unit_ip: str, unit_si: str, first: str = "ip") -> str:
    """`5/8 in (15.9 mm)`: the unit of the `first` system, then the other where it differs."""
    text = format_first(quantity, unit_ip, unit_si, first)
    other = _format_second(quantity, unit_ip) if first == "si" else format_first(quantity, unit_ip, unit_si, "si")
    return text if other == text else f"{text} ({other})"


def _format_second(quantity: Quantity, unit_ip: str) -> str:
    """The inch-pound figure beside a metric one: feet with its digits, three at least, as sixteenths claim more."""
    unit = _choose_unit(quantity, unit_ip)
    if unit != "ft" or UNITS[quantity.unit].system != "si":
        return format_quantity(quantity, unit)
    meters, digits = quantity.to("m"), _LEAST_DIGITS
    while digits < _MOST_DIGITS and Fraction(format_decimal(meters, digits)) != meters:
        digits += 1
    return f"{format_decimal(quantity.to('ft'), digits)} ft"


def format_first(quantity: Quantity, unit_ip: str, unit_si: str, first: str = "ip") -> str:
    """`5/8 in`: the unit of the `first` system alone."""
    return format_quantity(quantity, _choose_unit(quantity, unit_ip if first == "ip" else unit_si))


def format_inches(number: Fraction) -> str:
    """`1-1/2`, `3/4`, `0.886`: a fraction down to 1/128 where it is exact, else decimals."""
    if 128 % number.denominator:
        return format_decimal(number, 3)
    sign, number = ("-" if number < 0 else ""), abs(number)
    whole, part = divmod(number, 1)
    if not part:
        return f"{sign}{int(whole)}"
    return f"{sign}{int(whole)}-{part}" if whole else f"{sign}{part}"


def format_decimal(number: Fraction | float, digits: int = 3, places: int | None = None) -> str:
    """The number with `digits` significant digits, at most `places` decimals, halves up, no trailing zeros.

    Without `places` a very small or very large one is told by its power of ten; whole digits are never dropped else.
    """
    exact = Fraction(repr(number)) if isinstance(number, float) else Fraction(number)
    if not exact:
        return "0"
    power = _find_power(abs(exact))
    if not -3 <= power <= 9 and places is None:
        return f"{_round_half_up(exact / Fraction(10) ** power, digits - 1)}e{power}"
    wanted = max(0, digits - 1 - power)
    return _round_half_up(exact, wanted if places is None else min(places, wanted))


def raise_power(text: str) -> str:
    """A printed number with its power of ten raised: 5.66961e-8 is 5.66961 × 10⁻⁸, on one line."""
    digits, sign, power = text.partition("e")
    if not sign:
        return text
    ten = f"10{power.translate(_RAISED)}"
    return ten if digits == "1" else f"{digits}\u00a0×\u00a0{ten}"


def _round_half_up(number: Fraction, places: int) -> str:
    # In whole numbers: a fraction of each step would take most of the time of a large table.
    over, under = abs(number.numerator) * 10**places, number.denominator
    whole = (2 * over + under) // (2 * under)
    head, tail = divmod(whole, 10**places)
    decimals = f".{tail:0{places}d}".rstrip("0").rstrip(".") if places else ""
    return f"{'-' if number < 0 and whole else ''}{head}{decimals}"


def _find_power(number: Fraction) -> int:
    """The power of ten of the first significant digit."""
    power = floor(log10(number))
    (over, under), next_power = number.as_integer_ratio(), power + 1
    reached = over >= under * 10**next_power if next_power >= 0 else over * 10**-next_power >= under
    return next_power if reached else power


def _choose_unit(quantity: Quantity, unit: str) -> str:
    """The unit to print in: inches for a length under a foot, which is hard to read in feet."""
    if UNITS[unit].dimension != quantity.dimension:
        raise ValueError(f"{quantity.dimension} cannot be printed in {unit}")
    small = quantity.dimension == "length" and 0 < abs(quantity.to("ft")) < 1
    return {"ft": "in", "m": "mm"}.get(unit, unit) if small else unit


def _format_feet(number: Fraction) -> str:
    if number.denominator in (1, 5, 10):
        return f"{format_decimal(number, 8)} ft"
    whole, sixteenths = divmod(round(abs(number) * 192), 192)
    inches = Fraction(sixteenths, 16)
    part = f" {'0-' if inches < 1 else ''}{format_inches(inches)} in" if sixteenths else ""
    return f"{'-' if number < 0 else ''}{whole} ft{part}"
