"""Pressure of the standard atmosphere at an altitude, from below sea level to the top of the troposphere."""

from ..vocabulary.project import View
from ..vocabulary.provider import Ask, Key, Provider
from ..vocabulary.quantity import Quantity
from ..vocabulary.source import Kind, Source
from ..vocabulary.working import Given, Sum, Working
from . import _atmosphere
from ._guards import refuse_beyond

SOURCES = (
    _atmosphere.SOURCE,
    Source(Kind.MEMORY, "U.S. Standard Atmosphere, 1976: radius of the earth, weight and gas constant of air"),
)
# The temperature falls evenly up to 11 km; the standard begins below sea level.
LOWEST, HIGHEST = Quantity.of(-1000, "ft"), Quantity.of(36000, "ft")
PASCALS = {"psi": float(Quantity.of(1, "psi").amount), "kPa": 1000.0}
NOTES = ("Absolute pressure of the standard day; a gauge reads 0 there. Weather moves it a little.",)


def air_pressure(altitude: Quantity, system: str = "ip") -> Working:
    """Absolute air pressure, in psi or kPa, at a height above sea level; source: `SOURCES`. Raises Refused."""
    refuse_beyond("altitude", altitude, LOWEST, HIGHEST)
    length, unit = ("ft", "psi") if system == "ip" else ("m", "kPa")
    given = (
        Given("Z", "altitude", altitude.number(length), length),
        Given("a", "radius of the earth", 6356766.0, "m"),
        Given("P_0", "pressure at sea level", _atmosphere.SEA_LEVEL.number("Pa"), "Pa"),
        Given("T_0", "temperature at sea level", float(_atmosphere.WARMTH), "K"),
        Given("b", "fall of the temperature", float(_atmosphere.FALL), "K/m"),
        Given("g", "gravity", float(_atmosphere.GRAVITY), "m/s2"),
        Given("M", "molar weight of air", float(_atmosphere.WEIGHT), "kg/mol"),
        Given("R", "gas constant of the standard", float(_atmosphere.GAS), "J/(mol·K)"),
        Given("c", f"pascals in 1 {unit}", PASCALS[unit], "Pa"),
    )
    made = Sum(given)
    meters = "Z"
    if system == "ip":
        made.step("Z_m", "altitude", "Z * 0.3048", "m")
        meters = "Z_m"
    # Gravity weakens with height; the standard takes that into a height of its own.
    made.step("H", "height at even gravity", f"a * {meters} / (a + {meters})", "m")
    made.step("T", "temperature at that height", "T_0 - b * H", "K")
    made.step("n", "exponent", "g * M / (R * b)", "")
    pressure = made.step("P", "air pressure, absolute", "P_0 * (T / T_0)^n / c", unit)
    made.step("x", "share of the pressure at sea level", "P * c / P_0", "")
    return Working("air-pressure", given, tuple(made.steps), pressure, unit, SOURCES, NOTES, beside=("x",))


def for_project(project: View, ask: Ask) -> Working:
    """The air pressure at the site."""
    return air_pressure(project.site.altitude, project.project.get(("package", "units")) or "ip")


PROVIDER = Provider(
    "air-pressure",
    "Air pressure at an altitude, absolute",
    (),
    for_project,
    direct=air_pressure,
    reads=("site.altitude",),
    units=("psi", "kPa"),
    printed=False,  # what the site's air is worth stands with the air of the compressor
    keys=(Key("altitude", "length", "height above sea level, -1000 ft to 36,000 ft"),),
)
