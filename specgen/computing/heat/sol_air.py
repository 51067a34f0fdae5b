"""Sol-air temperature: the air temperature that would heat a wall in shade as much as sun and air heat it together."""

from specgen.computing.heat_balance import AIR, SUN
from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity
from specgen.standards import find_source

SOURCES = (find_source("ashrae_sol_air"),)
# Still air to gale, and the loss of a level roof to a clear sky with room to spare; bounds of our own.
FILM = (Quantity.of(1, "W/(m2.K)"), Quantity.of(100, "W/(m2.K)"))
LOSS = (Quantity.of(0, "F apart"), Quantity.of(50, "F apart"))
TABLE_NOTE = (
    "Printed tables give 0.15 for light and 0.30 for dark faces: that is absorptance over h_o in h·ft²·°F/Btu, and "
    "no absorptance."
)


class SolAirInputs(Inputs):
    """A face with the air and the sun on it; `long_wave` is what it loses to the sky."""

    air: Quantity = given_input("T_a", "air", "temperature", about="air at the face", within=AIR)
    irradiance: Quantity = given_input(
        "E", "irradiance", "irradiance", units=("Btu/h.ft2", "W/m2"), about="sun on the face", within=SUN
    )
    absorptance: float = given_input(
        "a", "solar absorptance", "number", about="0 to 1: 1 less solar reflectance", within=(0, 1)
    )
    h_o: Quantity = given_input(
        "h_o",
        "heat passed at the face, air and surroundings",
        "heat_transfer",
        units=("Btu/(h.ft2.F)", "W/(m2.K)"),
        about="heat passed at the face, air and surroundings together",
        within=FILM,
    )
    long_wave: Quantity = given_input(
        "dT_l",
        "loss to the sky",
        "temperature_difference",
        default=LOSS[0],
        about="loss to the sky: 0 for a wall, about 7 F for a roof",
        within=LOSS,
    )


def sol_air(inputs: SolAirInputs) -> Working:
    """Sol-air temperature, in °F or °C; source: `SOURCES`. Raises Refused."""
    degree = "F" if inputs.system == "ip" else "C"
    working = WorkingBuilder(inputs.rows())
    working.step("dT_s", "heating by the sun", "a * E / h_o", f"{degree} apart")
    working.step("T_e", "sol-air temperature", "T_a + dT_s - dT_l", degree)
    return working.build("sol-air", "T_e", SOURCES, (TABLE_NOTE,))


PROVIDER = provide(
    "Sol-air temperature",
    SolAirInputs,
    sol_air,
    example='air=95F irradiance=250Btu/h.ft2 absorptance=0.9 "h_o=3Btu/(h.ft2.F)"',
)
