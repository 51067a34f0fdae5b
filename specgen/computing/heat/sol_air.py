"""Sol-air temperature: the air temperature that would heat a wall in shade as much as sun and air heat it together."""

from specgen.computing.guards import refuse_beyond, refuse_outside
from specgen.computing.heat._heat_balance import COLDEST, HOTTEST, MOST_SUN, NO_SUN
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Key, Provider

SOURCES = (Source(Kind.PUBLISHED, "ASHRAE Handbook, Fundamentals: sol-air temperature"),)
# Still air to gale, and the loss of a level roof to a clear sky with room to spare; bounds of our own.
LEAST_FILM, MOST_FILM = Quantity.of(1, "W/(m2.K)"), Quantity.of(100, "W/(m2.K)")
NO_LOSS, MOST_LOSS = Quantity.of(0, "F apart"), Quantity.of(50, "F apart")
TABLE_NOTE = (
    "Printed tables give 0.15 for light and 0.30 for dark faces: that is absorptance over h_o in h·ft²·°F/Btu, and "
    "no absorptance."
)


def sol_air(
    air: Quantity,
    irradiance: Quantity,
    absorptance: float,
    h_o: Quantity,
    long_wave: Quantity,
    system: str = "ip",
) -> Working:
    """Sol-air temperature, in °F or °C; source: `SOURCES`. Raises Refused.

    Absorptance runs from 0 to 1; `long_wave` is what the face loses to the sky, in degrees apart.
    """
    refuse_beyond("air", air, COLDEST, HOTTEST)
    refuse_beyond("irradiance", irradiance, NO_SUN, MOST_SUN)
    refuse_outside("absorptance", absorptance, 0, 1)
    refuse_beyond("h_o", h_o, LEAST_FILM, MOST_FILM)
    refuse_beyond("long_wave", long_wave, NO_LOSS, MOST_LOSS)
    degree, sun, film = ("F", "Btu/h.ft2", "Btu/(h.ft2.F)") if system == "ip" else ("C", "W/m2", "W/(m2.K)")
    given = (
        Given("T_a", "air", air.number(degree), degree),
        Given("E", "irradiance", irradiance.number(sun), sun),
        Given("a", "solar absorptance", float(absorptance), ""),
        Given("h_o", "heat passed at the face, air and surroundings", h_o.number(film), film),
        Given("dT_l", "loss to the sky", long_wave.number(f"{degree} apart"), f"{degree} apart"),
    )
    made = Sum(given)
    made.step("dT_s", "heating by the sun", "a * E / h_o", f"{degree} apart")
    heated = made.step("T_e", "sol-air temperature", "T_a + dT_s - dT_l", degree)
    return Working("sol-air", given, tuple(made.steps), heated, degree, SOURCES, (TABLE_NOTE,))


PROVIDER = Provider(
    "sol-air",
    "Sol-air temperature",
    (),
    None,
    direct=sol_air,
    units=("F", "C"),
    keys=(
        Key("air", "temperature", "air at the face"),
        Key("irradiance", "irradiance", "sun on the face"),
        Key("absorptance", "number", "0 to 1: 1 less solar reflectance"),
        Key("h_o", "heat_transfer", "heat passed at the face, air and surroundings together"),
        Key("long_wave", "temperature_difference", "loss to the sky: 0 for a wall, about 7 F for a roof", "0 F"),
    ),
)
