"""The dew point of a line of weather, as a form asks for it."""

from fractions import Fraction
from functools import lru_cache

from specgen.computing.moisture.dew_point import AirInputs, dew_point
from specgen.model.problem import Refused
from specgen.quantities.format import format_decimal
from specgen.quantities.quantity import Quantity


@lru_cache(maxsize=4096)
def find_dew_point(air: Quantity, humidity: Fraction, system: str) -> float | None:
    """The dew point over water, in °F or °C by the system; None outside the range of its formula."""
    try:
        return float(dew_point(AirInputs(air=air, rh=humidity, system=system)).result)
    except Refused:
        return None


def tell_dew_point(air: Quantity, humidity: Fraction, system: str) -> str:
    """The dew point to a tenth of a degree; empty where there is none."""
    found = find_dew_point(air, humidity, system)
    return "" if found is None else format_decimal(found, 3, 1)
