"""How far a surface lies above the dew point of the air at it, and the least surface temperature for a coat."""

from specgen.computing.inputs import given_input, limit_input, provide
from specgen.computing.moisture._dew import (
    COLDEST,
    HOTTEST,
    SOURCES,
    AirInputs,
    add_dew_and_frost,
    require_humidity,
    tell_frost,
)
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import InForce
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import Quantity

# Walls from deep winter to a dark face in the sun; bounds of our own.
COLDEST_WALL, HOTTEST_WALL = Quantity.of(-80, "F"), Quantity.of(250, "F")


class MarginInputs(AirInputs):
    """A surface, the air at it, and the least margin of a surface to be coated."""

    air: Quantity = given_input("T_a", "air", "temperature", about="air at the wall", within=(COLDEST, HOTTEST))
    surface: Quantity = given_input(
        "T_s", "surface", "temperature", about="surface to be coated", within=(COLDEST_WALL, HOTTEST_WALL)
    )
    margin: InForce = limit_input(
        "weather.above_dew_point", says="no paint on a surface less than {margin} above the dew point"
    )


def surface_margin(inputs: MarginInputs) -> Working:
    """Surface less dew point over water, in °F or °C apart; beside it the least surface temperature. Raises Refused.

    Below freezing the margin to the frost point stands beside it too.
    """
    require_humidity(inputs)
    degree = "F" if inputs.system == "ip" else "C"
    apart = f"{degree} apart"
    least = InputRow("m", "least margin of a surface to be coated", inputs.margin.value.number(apart), apart)
    working = WorkingBuilder((*inputs.rows(), least))
    frost = add_dew_and_frost(working, degree)
    working.step("M", "surface above the dew point", "T_s - T_d", apart)
    working.step("T_m", "least surface temperature allowed", "T_d + m", degree)
    if frost:
        working.step("M_f", "surface above the frost point", "T_s - T_f", apart)
    sources = (inputs.limit_source("margin"), *SOURCES)
    beside = ("T_m", "M_f") if frost else ("T_m",)
    return working.build("surface-margin", "M", sources, tell_frost(inputs.air, frost), secondary_results=beside)


PROVIDER = provide(
    "Surface above the dew point",
    MarginInputs,
    surface_margin,
    example="air=70F rh=50% surface=62F",
)
