"""Dew and frost point of moist air by the Magnus form, for every sum that needs them."""

from fractions import Fraction
from math import ceil

from specgen.computing.dew import OVER_ICE, OVER_WATER, find_humidity
from specgen.computing.inputs import Inputs, given_input
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.problem import refuse
from specgen.model.source import Kind, Source
from specgen.quantities.quantity import Quantity

SOURCES = (
    # Written out here, so that a dew point reads no rows of the trade.
    Source(
        Kind.PUBLISHED,
        "WMO-No. 8, Guide to Instruments and Methods of Observation, undated copy, annex 4.B: Magnus form over water, "
        "6.112 hPa, 17.62, 243.12 °C",
    ),
    Source(Kind.MEMORY, "WMO-No. 8, annex 4.B: over ice 22.46, 272.62 °C; range -45 to 60 °C over water"),
)
# Range of the form over water, for the air and for the dew point.
COLDEST, HOTTEST = Quantity.of(-45, "C"), Quantity.of(60, "C")
HUMIDITY_NAMES = ("humidity", "relative_humidity")
# Below this a share, such as 0.5 for 50 %, was meant; bound of our own.
LEAST_HUMIDITY = 1.0
FREEZING_NOTE = (
    "Below freezing, dew is told over water and frost over ice; frost comes first, at the warmer of the two."
)
HUMIDITY_NOTE = "Below freezing, humidity is taken as meters tell it, over water and not over ice."


class AirInputs(Inputs):
    """Air and its relative humidity, in percent."""

    air: Quantity = given_input("T_a", "air", "temperature", about="air temperature", within=(COLDEST, HOTTEST))
    rh: Fraction = given_input(
        "RH",
        "relative humidity",
        "percent",
        about="relative humidity, above 0 to 100 %",
        span=("0", "100"),
        also=HUMIDITY_NAMES,
    )


def require_humidity(inputs: AirInputs) -> None:
    """Raises Refused where the humidity leaves the range of the Magnus form in this air."""
    least = min(100.0, max(LEAST_HUMIDITY, ceil(_humidity_at_coldest(inputs.air.number("C")) * 100) / 100))
    if not least <= inputs.rh <= 100:
        hint = f"it lies from {least:g} to 100 %, the range of the formula in this air"
        raise refuse(f"rh is {float(inputs.rh):g} %", hint)


def _humidity_at_coldest(air: float) -> float:
    """The humidity, in percent, of air in °C whose dew point is the coldest of the form."""
    return find_humidity(air, COLDEST.number("C"))


def add_dew_and_frost(working: WorkingBuilder, degree: str) -> bool:
    """Adds T_d, the dew point in °F or °C, and below freezing T_f, the frost point; returns whether that is so."""
    fahrenheit = degree == "F"
    celsius = "T_a"
    if fahrenheit:
        working.step("C_a", "air", "(T_a - 32) / 1.8", "C")
        celsius = "C_a"
    (factor, offset), (over_ice, offset_ice) = OVER_WATER, OVER_ICE
    exponent = f"ln(RH / 100) + {factor} * {celsius} / ({offset} + {celsius})"
    working.step("g", "Magnus exponent of the vapor", exponent, "")
    working.step("T_d", "dew point, over water", _back(f"{offset} * g / ({factor} - g)", fahrenheit), degree)
    if working.known["g"] >= 0:
        return False
    working.step("T_f", "frost point, over ice", _back(f"{offset_ice} * g / ({over_ice} - g)", fahrenheit), degree)
    return True


def _back(celsius: str, fahrenheit: bool) -> str:
    return f"{celsius} * 1.8 + 32" if fahrenheit else celsius


def tell_frost(air: Quantity, frost: bool) -> tuple[str, ...]:
    """What must be said of cold air."""
    cold = (HUMIDITY_NOTE,) if air < Quantity.of(0, "C") else ()
    return ((FREEZING_NOTE,) if frost else ()) + cold
