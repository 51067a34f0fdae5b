"""Steady temperature of a sunlit face by heat balance: sun taken up, given off to surroundings and moving air."""

from specgen.computing.guards import refuse_beyond
from specgen.computing.heat._heat_balance import (
    HOTTEST,
    NOTES,
    SIGMA,
    balanced,
    from_kelvin,
    refuse_unfit_face,
    to_kelvin,
)
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.quantities.parse import parse_quantity
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Key, Provider

SOURCES = (Source(Kind.PUBLISHED, "ASTM E1980: heat balance of a surface, conduction left out"),)
# A clear sky is far colder than the air; still air to gale for the heat passed to it. Bounds of our own.
COLDEST_SKY = Quantity.of(-150, "F")
STILL, GALE = Quantity.of(1, "W/(m2.K)"), Quantity.of(100, "W/(m2.K)")


def surface_temperature(
    solar_reflectance: float,
    emittance: float,
    air: Quantity,
    irradiance: Quantity,
    h_c: Quantity,
    surroundings: Quantity | None = None,
    system: str = "ip",
) -> Working:
    """Temperature of the face, in °F or °C; surroundings as hot as the air if None; source: `SOURCES`. Raises Refused.

    Reflectance and emittance run from 0 to 1.
    """
    around = air if surroundings is None else surroundings
    refuse_unfit_face(solar_reflectance, emittance, irradiance, air=air)
    refuse_beyond("surroundings", around, COLDEST_SKY, HOTTEST)
    refuse_beyond("h_c", h_c, STILL, GALE)
    degree = "F" if system == "ip" else "C"
    given = (
        Given("SR", "solar reflectance", float(solar_reflectance), ""),
        Given("e", "emittance", float(emittance), ""),
        Given("T_a", "air", air.number(degree), degree),
        Given("T_r", "surroundings", around.number(degree), degree),
        Given("I", "irradiance", irradiance.number("W/m2"), "W/m2"),
        Given("h", "heat passed to the air", h_c.number("W/(m2.K)"), "W/(m2.K)"),
        Given("s", "Stefan-Boltzmann constant", SIGMA, "W/(m2·K4)"),
    )
    made = Sum(given)
    face = _face(made, degree)
    return Working("surface-temperature", given, tuple(made.steps), face, degree, SOURCES, NOTES)


def _face(made: Sum, degree: str) -> float:
    known = made.known
    made.step("K_a", "air, absolute", to_kelvin("T_a", degree), "K")
    made.step("K_r", "surroundings, absolute", to_kelvin("T_r", degree), "K")
    made.step("G", "sun taken up", "(1 - SR) * I", "W/m2")
    known["K_s"] = balanced(known["G"], known["e"], known["K_a"], known["h"], known["K_r"])
    # K_s stands on both sides: it was found by trial, and the line shows that the balance closes at it.
    made.step("K_s", "face where heat given off equals G", "K_a + (G - e * s * (K_s^4 - K_r^4)) / h", "K")
    return made.step("T_s", "face", from_kelvin("K_s", degree), degree)


def _surroundings(text: str) -> Quantity | None:
    return None if text == "air" else parse_quantity(text, "temperature", ("F", "C"))


PROVIDER = Provider(
    "surface-temperature",
    "Temperature of a sunlit face",
    (),
    None,
    direct=surface_temperature,
    units=("F", "C"),
    keys=(
        Key("solar_reflectance", "number", "0 to 1"),
        Key("emittance", "number", "0 to 1"),
        Key("air", "temperature", "air at the face"),
        Key("irradiance", "irradiance", "sun on the face"),
        Key(
            "h_c",
            "heat_transfer",
            "heat passed to the air: 5, 12, 30 W/m2K at low, medium, high wind",
            "12 W/m2K",
            bare="W/(m2.K)",
        ),
        Key(
            "surroundings",
            "temperature",
            "what the face radiates to; air for air temperature",
            "air",
            read=_surroundings,
        ),
    ),
)
