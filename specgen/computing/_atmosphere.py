"""The standard atmosphere below 11 km: pressure by altitude, as figures and as a line of a sum."""

from fractions import Fraction

from ..vocabulary.quantity import Quantity
from ..vocabulary.source import Kind, Source
from ..vocabulary.working import Given
from ._guards import refuse_beyond

SOURCE = Source(
    Kind.MEMORY, "U.S. Standard Atmosphere, 1976: 101.325 kPa and 15 °C at sea level, 6.5 °C colder for each km"
)
SEA_LEVEL = Quantity.of("101.325", "kPa")
WARMTH, FALL = Fraction("288.15"), Fraction("0.0065")  # K at sea level, K less for each m
GRAVITY, WEIGHT, GAS = Fraction("9.80665"), Fraction("0.0289644"), Fraction("8.31432")  # m/s2, kg/mol, J/(mol K)
# Altitude at which the air would end if it went on growing colder as it does below 11 km.
_END = Quantity.of(WARMTH / FALL, "m")
_POWER = float(GRAVITY * WEIGHT / (GAS * FALL))
# 5 km below and 11 km above sea level, the reach of the one formula.
LOWEST, HIGHEST = Quantity.of(-16400, "ft"), Quantity.of(36000, "ft")
PRESSURE = "P_0 * (1 - z / z_0)^n"


def pressure_kpa(altitude_m: float) -> float:
    """Pressure of the standard atmosphere in kPa at an altitude in m; a site's weather moves it by 3 % or so."""
    share: float = (1 - altitude_m / _END.number("m")) ** _POWER
    return SEA_LEVEL.number("kPa") * share


def pressure_psia(altitude_ft: float) -> float:
    """Pressure of the standard atmosphere in psi, absolute, at an altitude in ft."""
    return pressure_kpa(altitude_ft * 0.3048) / Quantity.of(1, "psi").number("kPa")


def pressure(altitude: Quantity) -> Quantity:
    """Pressure of the standard atmosphere at an altitude; raises Refused outside the formula's reach."""
    refuse_beyond("altitude", altitude, LOWEST, HIGHEST)
    return Quantity.of(repr(pressure_kpa(altitude.number("m"))), "kPa")


def given(altitude: Quantity, system: str) -> tuple[Given, ...]:
    """What the line `PRESSURE` is computed from, in ft and psi or m and kPa; raises Refused as `pressure`."""
    refuse_beyond("altitude", altitude, LOWEST, HIGHEST)
    length, force = ("ft", "psi") if system == "ip" else ("m", "kPa")
    return (
        Given("z", "altitude", altitude.number(length), length),
        Given("P_0", "pressure at sea level, absolute", SEA_LEVEL.number(force), force),
        Given("z_0", "altitude at which the formula ends", _END.number(length), length),
        Given("n", "power of the standard atmosphere", _POWER, ""),
    )
