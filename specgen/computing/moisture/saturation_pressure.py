"""Pressure of water vapor that air can hold at a temperature, over water, or below freezing over ice."""

from specgen.computing.guards import refuse_beyond
from specgen.computing.moisture._saturation import SOURCE, over_ice, over_water
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Key, Provider

FREEZING = Quantity.of(0, "C")
# Weather and rooms; bounds of our own, within which it keeps to 0.2 % of the ASHRAE equation over water, 2 % over ice.
COLDEST, HOTTEST = Quantity.of(-40, "C"), Quantity.of(60, "C")


def saturation_pressure(temperature: Quantity, system: str = "ip") -> Working:
    """Saturation pressure of water vapor, in Pa; source: ISO 13788. Raises Refused."""
    refuse_beyond("temperature", temperature, COLDEST, HOTTEST)
    degree = "F" if system == "ip" else "C"
    made = Sum((Given("T", "temperature", temperature.number(degree), degree),))
    if temperature < FREEZING:
        pressure = made.step("p", "saturation pressure, over ice", over_ice("T", degree), "Pa")
    else:
        pressure = made.step("p", "saturation pressure, over water", over_water("T", degree), "Pa")
    return Working("saturation-pressure", made.given, tuple(made.steps), pressure, "Pa", (SOURCE,))


PROVIDER = Provider(
    "saturation-pressure",
    "Saturation pressure of water vapor",
    (),
    None,
    direct=saturation_pressure,
    units=("Pa", "Pa"),
    keys=(Key("temperature", "temperature", "of the air or the surface"),),
)
