"""Pressure of the standard atmosphere at an altitude, from below sea level to the top of the troposphere."""

from specgen.computing.air import _atmosphere
from specgen.computing.inputs import Inputs, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity

NOTES = ("Absolute pressure of the standard day; a gauge reads 0 there. Weather moves it a little.",)


class PressureInputs(Inputs):
    """A height above sea level."""

    altitude: Quantity = _atmosphere.altitude_input("height above sea level, -16,400 ft to 36,000 ft")


def air_pressure(inputs: PressureInputs) -> Working:
    """Absolute air pressure, in psi or kPa, at a height above sea level. Raises Refused."""
    working = WorkingBuilder((*inputs.rows(), *_atmosphere.standard_rows(inputs.system)))
    _atmosphere.add_air_pressure(working, "psi" if inputs.system == "ip" else "kPa")
    working.step("x", "share of the pressure at sea level", "P_a / P_0", "")
    return working.build("air-pressure", "P_a", (_atmosphere.SOURCE,), NOTES, secondary_results=("x",))


PROVIDER = provide(
    "Air pressure at an altitude, absolute",
    PressureInputs,
    air_pressure,
    printed=False,  # what the site's air is worth stands with the air of the compressor
    example="altitude=5200ft",
)
