"""Steady temperature of a sunlit face by heat balance: sun taken up, given off to surroundings and moving air."""

from specgen.computing.heat_balance import AIR, NOTES, SIGMA, SUN, balance_face, from_kelvin, to_kelvin
from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.problem import refuse
from specgen.model.working import InputRow, Working
from specgen.quantities.parse import parse_quantity
from specgen.quantities.quantity import Quantity
from specgen.standards import find_source

# Absolute zero for the darkest sky, and none to gale for the heat passed to the air: worked examples have both.
SKY_OR_AIR = (Quantity.of(0, "K"), AIR[1])
FILM = (Quantity.of(0, "W/(m2.K)"), Quantity.of(100, "W/(m2.K)"))
MEDIUM_WIND = Quantity.of(12, "W/(m2.K)")
HEAT_WANTED = "give h_c or emittance more than 0"


def _read_surroundings(text: str) -> Quantity | None:
    return None if text == "air" else parse_quantity(text, "temperature", ("F", "C"))


class SurfaceInputs(Inputs):
    """A face with the air, the sun and what it radiates to, which is as hot as the air where it is None."""

    solar_reflectance: float = given_input("SR", "solar reflectance", "number", about="0 to 1", within=(0, 1))
    emittance: float = given_input("e", "emittance", "number", about="0 to 1", within=(0, 1))
    air: Quantity = given_input("T_a", "air", "temperature", about="air at the face", within=AIR)
    irradiance: Quantity = given_input("I", "irradiance", "irradiance", about="sun on the face", within=SUN)
    h_c: Quantity = given_input(
        "h",
        "convection coefficient",
        "heat_transfer",
        default=MEDIUM_WIND,
        about="convection coefficient: 5, 12, 30 W/m2K at low, medium, high wind",
        bare="W/(m2.K)",
        within=FILM,
    )
    surroundings: Quantity | None = given_input(
        "T_r",
        "surroundings",
        "temperature",
        default=None,
        default_text="air",
        about="what the face radiates to; air for air temperature",
        read=_read_surroundings,
        within=SKY_OR_AIR,
    )


def surface_temperature(inputs: SurfaceInputs) -> Working:
    """Temperature of the face, in °F or °C. Raises Refused."""
    degree = "F" if inputs.system == "ip" else "C"
    inputs = inputs.change(surroundings=inputs.surroundings or inputs.air)
    if not inputs.h_c.amount and not inputs.emittance:
        raise refuse("a face that passes no heat to the air and radiates none has no steady temperature", HEAT_WANTED)
    rows = inputs.rows("solar_reflectance", "emittance", "air", "surroundings", "irradiance", "h_c")
    working = WorkingBuilder((*rows, InputRow("s", "Stefan-Boltzmann constant", SIGMA, "W/(m2·K4)")))
    known = working.known
    working.step("K_a", "air, absolute", to_kelvin("T_a", degree), "K")
    working.step("K_r", "surroundings, absolute", to_kelvin("T_r", degree), "K")
    working.step("G", "absorbed sun", "(1 - SR) * I", "W/m2")
    known["K_s"] = balance_face(known["G"], known["e"], known["K_a"], known["h"], known["K_r"])
    # K_s stands on both sides: it was found by trial, and the line shows that the balance closes at it.
    balance = "K_a + (G - e * s * (K_s^4 - K_r^4)) / h" if known["h"] else "(K_r^4 + G / (e * s))^(1 / 4)"
    working.step("K_s", "face temperature, heat balance, absolute", balance, "K")
    working.step("T_s", "face", from_kelvin("K_s", degree), degree)
    source = find_source("astm_e1980").quote("heat balance of a surface, conduction left out")
    return working.build("surface-temperature", "T_s", (source,), NOTES)


PROVIDER = provide(
    "Temperature of a sunlit face",
    SurfaceInputs,
    surface_temperature,
    example="solar_reflectance=0.4 emittance=0.3 air=95F irradiance=800W/m2",
)
