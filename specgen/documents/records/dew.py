"""The dew point of a line of weather, as a form asks for it."""

from fractions import Fraction
from functools import cache

from specgen.computing import find
from specgen.computing.dew import find_dew_point
from specgen.model.source import Source
from specgen.quantities.format import format_decimal
from specgen.quantities.quantity import Quantity

# Drier air is out of the range of the formula.
_LEAST_HUMIDITY = 1


def compute_dew_point(air: Quantity, humidity: Fraction, system: str) -> float | None:
    """The dew point over water, in °F or °C by the system; None where air is told too dry for one."""
    if humidity < _LEAST_HUMIDITY:
        return None
    celsius = find_dew_point(air.number("C"), float(humidity))
    return celsius * 1.8 + 32 if system == "ip" else celsius


def tell_dew_point(air: Quantity, humidity: Fraction, system: str) -> str:
    """The dew point to a tenth of a degree; empty where there is none."""
    found = compute_dew_point(air, humidity, system)
    return "" if found is None else format_decimal(found, 3, 1)


@cache
def find_source() -> Source:
    """The text that the formula is of, as its calculation cites it."""
    calculate = find("dew-point").direct
    assert calculate is not None
    source: Source = calculate(air=Quantity.of(20, "C"), rh=Fraction(50)).source[0]
    return source
