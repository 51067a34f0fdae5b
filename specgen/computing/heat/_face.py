"""The face of an elevation in the sun: its inputs, and the steps of its heat balance."""

from dataclasses import dataclass
from typing import Any

from specgen.computing.heat._heat_balance import SIGMA, balanced, from_kelvin, to_kelvin
from specgen.model.project import View
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum
from specgen.quantities.format import printed
from specgen.quantities.quantity import Quantity

BALANCE = Source(
    Kind.PUBLISHED,
    "ASTM E1980: heat balance of a surface, solved here for a wall with surroundings at air temperature; 5 W/(m²·K) "
    "at low wind, 12 at medium wind",
)
REFLECTED_SUN = 1.3  # irradiance with that of glass or metal that sends a second sun
SECOND_SUN = Source(Kind.MEMORY, "sun on a wall opposite glass or metal: 1.3 of that of the sun alone")
READS = (
    "climate.hot_air",
    "climate.peak_wall_irradiance",
    "elevations.*.color",
    "elevations.*.reflecting_surface_near",
)


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

    @property
    def degree(self) -> str:
        """The unit of temperatures: F or C."""
        return "F" if self.system == "ip" else "C"


def of_elevation(elevation: View) -> Inputs:
    """The inputs of an elevation with its own color; raises Absent."""
    project: Any = elevation.project.root()
    color = elevation.color
    return Inputs(
        hot_air=project.climate.hot_air,
        solar_reflectance=color.solar_reflectance,
        emittance=color.emittance,
        irradiance=project.climate.peak_wall_irradiance,
        reflected=elevation.reflecting_surface_near,
        limit=elevation.wall.get("insulation.service_limit"),
        system=elevation.project.system,
    )


def given(inputs: Inputs, h_c: float) -> tuple[Given, ...]:
    """The inputs of the balance by symbol, with the heat passed to the air in W/(m2·K)."""
    return (
        Given("T_a", "hot air", inputs.hot_air.number(inputs.degree), inputs.degree),
        Given("SR", "solar reflectance", float(inputs.solar_reflectance), ""),
        Given("e", "emittance", float(inputs.emittance), ""),
        Given("I", "irradiance on the wall", inputs.irradiance.number("W/m2"), "W/m2"),
        Given("s", "Stefan-Boltzmann constant", SIGMA, "W/(m2·K4)", source=BALANCE),
        Given("h", "heat passed to the air", h_c, "W/(m2.K)", source=BALANCE),
        *_sun(inputs.reflected),
        *_limit(inputs),
    )


def _sun(reflected: bool) -> tuple[Given, ...]:
    if reflected:
        return (Given("r", "share of sun with reflection", REFLECTED_SUN, "", source=SECOND_SUN),)
    return (Given("r", "share of sun, none reflected", 1.0, ""),)


def sources(inputs: Inputs, *first: Source) -> tuple[Source, ...]:
    """The sources of a face heat, those of the calculation's own before the balance."""
    return (*first, BALANCE, *((SECOND_SUN,) if inputs.reflected else ()))


def _limit(inputs: Inputs) -> tuple[Given, ...]:
    if inputs.limit is None:
        return ()
    return (Given("T_b", "where the board softens", inputs.limit.number(inputs.degree), inputs.degree),)


def face_by_balance(made: Sum, degree: str) -> None:
    """Adds the steps to T_2, the face by heat balance in °F or °C, and K_a, G, K_f on the way to it."""
    made.step("K_a", "hot air, absolute", to_kelvin("T_a", degree), "K")
    made.step("G", "sun taken up", "(1 - SR) * I * r", "W/m2")
    found_by_trial(made, "K_f", "face where heat given off equals G", "G")
    made.step("T_2", "face by heat balance", from_kelvin("K_f", degree), degree)


def found_by_trial(made: Sum, symbol: str, name: str, gain: str) -> None:
    """Adds the face, in kelvin, that gives off the heat named `gain`.

    It stands on both sides of its line: it was found by trial, and the line shows that the balance closes at it.
    """
    known = made.known
    known[symbol] = balanced(known[gain], known["e"], known["K_a"], known["h"])
    made.step(symbol, name, f"K_a + ({gain} - e * s * ({symbol}^4 - K_a^4)) / h", "K")


def margin_note(face: float, limit: Quantity, degree: str) -> str:
    """How far a face, in °F or °C, lies from where the board softens, as a sentence."""
    margin = limit.number(degree) - face
    side = "below" if margin > 0 else "above"
    return f"The face lies {abs(margin):.1f} °{degree} {side} {printed(limit, degree)}, where the board softens."
