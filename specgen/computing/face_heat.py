"""Hottest face of the coated wall: the greater of a rule of thumb for joints and a heat balance."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from ..vocabulary.project import View
from ..vocabulary.provider import Ask, Key, Provider
from ..vocabulary.quantity import Quantity
from ..vocabulary.quantity_print import printed
from ..vocabulary.source import Kind, Source
from ..vocabulary.working import Given, Sum, Working
from ._guards import refuse_outside

SOURCES = (
    Source(Kind.MEMORY, "ASTM C1472: hot air plus absorption times a heat capacity constant"),
    Source(
        Kind.PUBLISHED,
        "ASTM E1980: heat balance of a surface, solved here for a wall with surroundings at air temperature",
    ),
)
SIGMA = 5.66961e-8  # W/(m2·K4), the value ASTM E1980 uses
H_C = 12.0  # W/(m2·K), medium wind of ASTM E1980
# Heat capacity constant of a light skin, in kelvin apart: 100 F, 130 F with reflected sun; from memory.
CONSTANT, CONSTANT_REFLECTED = Fraction(500, 9), Fraction(650, 9)
REFLECTED_SUN = 1.3  # further irradiance where glass or metal sends a second sun; from memory
NOTES = ("Conduction into the board is left out, so the face is a little hotter here than on the wall.",)


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """What the face heat is computed from; `irradiance` is the peak on the wall, `limit` where the board softens.

    Reflectance and emittance run from 0 to 1. `system` is ip (°F) or si (°C).
    """

    hot_air: Quantity
    solar_reflectance: float
    emittance: float
    irradiance: Quantity
    reflected: bool = False
    limit: Quantity | None = None
    system: str = "ip"


def face_heat(inputs: Inputs) -> Working:
    """Temperature of the face, in °F or °C: the hotter of two methods; source: `SOURCES`. Raises Refused."""
    refuse_outside("solar_reflectance", inputs.solar_reflectance, 0, 1)
    refuse_outside("emittance", inputs.emittance, 0, 1)
    fahrenheit = inputs.system == "ip"
    degree = "F" if fahrenheit else "C"
    made = Sum(_given(inputs, degree))
    made.step("T_1", "face by the joint rule", "T_a + (1 - SR) * H", degree)
    made.step("K_a", "hot air, absolute", "(T_a + 459.67) / 1.8" if fahrenheit else "T_a + 273.15", "K")
    made.step("G", "sun taken up", "(1 - SR) * I * r", "W/m2")
    made.known["K_f"] = balanced(made.known["G"], float(inputs.emittance), made.known["K_a"])
    # K_f stands on both sides: it was found by trial, and the line shows that the balance closes at it.
    made.step("K_f", "face where heat given off equals G", "K_a + (G - e * s * (K_f^4 - K_a^4)) / h", "K")
    made.step("T_2", "face by heat balance", "K_f * 1.8 - 459.67" if fahrenheit else "K_f - 273.15", degree)
    hottest = made.step("T_f", "hottest face", "max(T_1, T_2)", degree)
    governs = "joint rule" if made.known["T_1"] >= made.known["T_2"] else "heat balance"
    notes = NOTES + _margin(hottest, degree, inputs.limit)
    return Working("face-heat", made.given, tuple(made.steps), hottest, degree, SOURCES, notes, governs)


def _given(inputs: Inputs, degree: str) -> tuple[Given, ...]:
    constant = (CONSTANT_REFLECTED if inputs.reflected else CONSTANT) * (Fraction(9, 5) if degree == "F" else 1)
    return (
        Given("T_a", "hot air", float(inputs.hot_air.to(degree)), degree),
        Given("SR", "solar reflectance", float(inputs.solar_reflectance), ""),
        Given("e", "emittance", float(inputs.emittance), ""),
        Given("I", "irradiance on the wall", float(inputs.irradiance.to("W/m2")), "W/m2"),
        Given("H", "heat capacity constant", float(constant), degree, source=SOURCES[0]),
        Given("s", "Stefan-Boltzmann constant", SIGMA, "W/(m2·K4)", source=SOURCES[1]),
        Given("h", "heat passed to moving air", H_C, "W/(m2·K)", source=SOURCES[1]),
        Given("r", "share of sun with reflection", REFLECTED_SUN if inputs.reflected else 1.0, ""),
    )


def balanced(gain: float, emittance: float, air: float, h_c: float = H_C) -> float:
    """The face temperature, in kelvin, at which heat given off equals `gain`; Newton's method, always falling."""
    face = air + gain / h_c
    for _ in range(60):
        lost = emittance * SIGMA * (face**4 - air**4) + h_c * (face - air)
        step = (lost - gain) / (4 * emittance * SIGMA * face**3 + h_c)
        face -= step
        if abs(step) < 1e-10:
            break
    return face


def _margin(hottest: float, degree: str, limit: Quantity | None) -> tuple[str, ...]:
    if limit is None:
        return ()
    margin = float(limit.to(degree)) - hottest
    side = "below" if margin > 0 else "above"
    return (f"The face lies {abs(margin):.1f} °{degree} {side} {printed(limit, degree)}, where the board softens.",)


def for_elevation(elevation: View, ask: Ask) -> Working:
    """The face heat of an elevation with its own color."""
    project: Any = elevation.project.root()
    color = elevation.color
    return face_heat(
        Inputs(
            hot_air=project.climate.hot_air,
            solar_reflectance=color.solar_reflectance,
            emittance=color.emittance,
            irradiance=project.climate.peak_wall_irradiance,
            reflected=elevation.reflecting_surface_near,
            limit=elevation.wall.get("insulation.service_limit"),
            system=elevation.project.get(("package", "units")) or "ip",
        )
    )


PROVIDER = Provider(
    "face-heat",
    "Hottest face of the wall",
    ("elevations",),
    for_elevation,
    direct=lambda **keys: face_heat(Inputs(**keys)),
    reads=(
        "climate.hot_air",
        "climate.peak_wall_irradiance",
        "elevations.*.color",
        "elevations.*.reflecting_surface_near",
    ),
    units=("F", "C"),
    group="heat",
    order=10,
    origins={
        "T_a": "climate.hot_air",
        "SR": "elevations.*.color.solar_reflectance",
        "e": "elevations.*.color.emittance",
        "I": "climate.peak_wall_irradiance",
        "r": "elevations.*.reflecting_surface_near",
    },
    keys=(
        Key("hot_air", "temperature", "hottest air"),
        Key("solar_reflectance", "number", "0 to 1"),
        Key("emittance", "number", "0 to 1"),
        Key("irradiance", "irradiance", "peak sun on the wall"),
        Key("reflected", "yes_no", "glass or metal sends a second sun", "no"),
        Key("limit", "temperature", "where the board softens", "165 F"),
    ),
)
