"""The standard atmosphere below 11 km: pressure by altitude, as figures and as a line of a sum."""

from fractions import Fraction
from typing import Any

from specgen.computing.inputs import given_input
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import InputRow
from specgen.quantities.quantity import Quantity
from specgen.standards import find_source

# 14.696 psi and 59 °F at sea level, 3.57 °F colder for each 1000 ft of even gravity.
SOURCE = find_source("standard_atmosphere")
SEA_LEVEL = Quantity.of("101.325", "kPa")
_WARMTH, _FALL = Fraction("288.15"), Fraction("0.0065")  # K at sea level, K less for each m
_GRAVITY, _WEIGHT, _GAS = Fraction("9.80665"), Fraction("0.0289644"), Fraction("8.31432")  # m/s2, kg/mol, J/(mol K)
_RADIUS = Quantity.of(6356766, "m")
# Height at which the air would end if it went on growing colder as it does below 11 km.
_END = Quantity.of(_WARMTH / _FALL, "m")
_POWER = float(_GRAVITY * _WEIGHT / (_GAS * _FALL))
# Below any land, and the top of the layer in which the air grows colder evenly.
REACH = (Quantity.of(-16400, "ft"), Quantity.of(36000, "ft"))


def altitude_input(about: str = "") -> Any:
    """Declares the height above sea level, within the reach of the formula."""
    return given_input("z", "altitude", "distance", "site.altitude", about, within=REACH)


def standard_rows(system: str) -> tuple[InputRow, ...]:
    """What `add_air_pressure` is computed from beside the altitude z, in ft and psi or m and kPa."""
    length, force = ("ft", "psi") if system == "ip" else ("m", "kPa")
    return (
        InputRow("a", "earth radius", _RADIUS.number(length), length, source=SOURCE),
        InputRow("P_0", "pressure at sea level, absolute", SEA_LEVEL.number(force), force, source=SOURCE),
        InputRow("z_0", "atmosphere height constant", _END.number(length), length, source=SOURCE),
        InputRow("n", "atmosphere exponent", _POWER, "", source=SOURCE),
    )


def add_air_pressure(working: WorkingBuilder, unit: str) -> float:
    """Adds the pressure P_a at the site, in `unit`, psi or kPa; a site's weather moves it by 3 % or so."""
    # Gravity weakens with height; the standard takes that into a height of its own.
    working.step("H", "geopotential altitude", "a * z / (a + z)", "ft" if unit == "psi" else "m")
    return working.step("P_a", "air pressure at altitude, absolute", "P_0 * (1 - H / z_0)^n", unit)
