"""The face of an elevation in the sun: its inputs, and the steps of its heat balance."""

from specgen.computing.heat._heat_balance import AIR, SIGMA, SUN, balance_face, from_kelvin, to_kelvin
from specgen.computing.inputs import Inputs, given_input, option_input
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import Kind, Source
from specgen.model.working import InputRow
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity
from specgen.standards import find_source

REFLECTED_SUN = 1.3  # irradiance with that of glass or metal that sends a second sun
BALANCE = find_source("astm_e1980").quote(
    "heat balance of a surface, solved here for a wall with surroundings at air temperature; 5 W/(m²·K) at low wind, "
    "12 at medium wind"
)
SECOND_SUN = Source(Kind.MEMORY, "sun on a wall opposite glass or metal: 1.3 of that of the sun alone")


class FaceInputs(Inputs):
    """The face of an elevation, the air and the sun on it; `limit` is where the board behind it softens."""

    hot_air: Quantity = given_input("T_a", "hot air", "temperature", "climate.hot_air", "hottest air", within=AIR)
    solar_reflectance: float = given_input(
        "SR", "solar reflectance", "number", "elevations.*.color.solar_reflectance", "0 to 1", within=(0, 1)
    )
    emittance: float = given_input("e", "emittance", "number", "elevations.*.color.emittance", "0 to 1", within=(0, 1))
    irradiance: Quantity = given_input(
        "I", "irradiance on the wall", "irradiance", computed="wall-sun", about="peak sun on the wall", within=SUN
    )
    share: float = given_input(
        "f",
        "share of sunniest wall",
        "number",
        default=1,
        about="sun on the wall over that of the sunniest wall, 0 to 1; the joint rule is written for 1",
        origin="wall-sun",
        within=(0, 1),
    )
    reflected: bool = option_input(
        "glass or metal sends a second sun",
        field="elevations.*.reflecting_surface_near",
        dimension="yes_no",
        default=False,
    )
    limit: Quantity | None = given_input(
        "T_b",
        "board service limit",
        "temperature",
        "elevations.*.wall.insulation.service_limit",
        optional=True,
        limit="board.softens",
        span=("32 F", "400 F"),
    )

    @property
    def degree(self) -> str:
        """The unit of temperatures: F or C."""
        return "F" if self.system == "ip" else "C"

    @property
    def sources(self) -> tuple[Source, ...]:
        """The sources of the balance."""
        return (BALANCE, *((SECOND_SUN,) if self.reflected else ()))


def balance_rows(inputs: FaceInputs, h_c: float) -> tuple[InputRow, ...]:
    """The inputs of the balance, with the heat passed to the air in W/(m2·K)."""
    sun = inputs.origin("reflected")
    reflected = InputRow("r", "reflected sun factor", REFLECTED_SUN, "", sun, SECOND_SUN)
    return (
        *inputs.rows("hot_air", "solar_reflectance", "emittance", "irradiance"),
        InputRow("s", "Stefan-Boltzmann constant", SIGMA, "W/(m2·K4)", source=BALANCE),
        InputRow("h", "convection coefficient", h_c, "W/(m2.K)", source=BALANCE),
        reflected if inputs.reflected else InputRow("r", "reflected sun factor, no reflecting surface", 1.0, "", sun),
        *inputs.rows("limit"),
    )


def add_face(working: WorkingBuilder, degree: str) -> None:
    """Adds the steps to T_2, the face by heat balance in °F or °C, and K_a, G, K_f on the way to it."""
    working.step("K_a", "hot air temperature, absolute", to_kelvin("T_a", degree), "K")
    working.step("G", "absorbed sun", "(1 - SR) * I * r", "W/m2")
    add_face_by_trial(working, "K_f", "face temperature, heat balance, absolute (by trial)", "G")
    working.step("T_2", "face temperature, heat balance", from_kelvin("K_f", degree), degree)


def add_face_by_trial(working: WorkingBuilder, symbol: str, name: str, gain: str) -> None:
    """Adds the face, in kelvin, that gives off the heat named `gain`.

    It stands on both sides of its line: it was found by trial, and the line shows that the balance closes at it.
    """
    known = working.known
    known[symbol] = balance_face(known[gain], known["e"], known["K_a"], known["h"])
    working.step(symbol, name, f"K_a + ({gain} - e * s * ({symbol}^4 - K_a^4)) / h", "K")


def tell_margin(face: float, limit: Quantity, degree: str) -> str:
    """How far a face, in °F or °C, lies from where the board softens, as a sentence."""
    margin = limit.number(degree) - face
    side = "below" if margin > 0 else "above"
    return (
        f"The face lies {abs(margin):.1f} °{degree} {side} {format_quantity(limit, degree)}, where the board softens."
    )
