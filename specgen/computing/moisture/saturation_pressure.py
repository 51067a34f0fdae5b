"""Pressure of water vapor that air can hold at a temperature, over water, or below freezing over ice."""

from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.moisture._saturation import SOURCE, express_over_ice, express_over_water
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity

FREEZING = Quantity.of(0, "C")
# Weather and rooms; bounds of our own, within which it keeps to 0.2 % of the ASHRAE equation over water, 2 % over ice.
COLDEST, HOTTEST = Quantity.of(-40, "C"), Quantity.of(60, "C")


class SaturationInputs(Inputs):
    """The temperature of air or a surface."""

    temperature: Quantity = given_input(
        "T", "temperature", "temperature", about="of the air or the surface", within=(COLDEST, HOTTEST)
    )


def saturation_pressure(inputs: SaturationInputs) -> Working:
    """Saturation pressure of water vapor, in Pa; source: ISO 13788. Raises Refused."""
    degree = "F" if inputs.system == "ip" else "C"
    working = WorkingBuilder(inputs.rows())
    if inputs.temperature < FREEZING:
        working.step("p", "saturation pressure, over ice", express_over_ice("T", degree), "Pa")
    else:
        working.step("p", "saturation pressure, over water", express_over_water("T", degree), "Pa")
    return working.build("saturation-pressure", "p", (SOURCE,))


PROVIDER = provide(
    "Saturation pressure of water vapor",
    SaturationInputs,
    saturation_pressure,
    example="temperature=70F",
)
