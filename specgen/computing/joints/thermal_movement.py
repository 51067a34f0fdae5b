"""Change of length of a stretch of wall by a change of temperature."""

from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity
from specgen.standards import find_source

NOTES = (
    "The stretch is taken to be free at both ends; what holds it makes stress of the movement it prevents.",
    "Moisture and movements of the building are not in this sum; joint-width adds them.",
)


class MovementInputs(Inputs):
    """A stretch of wall and its change of temperature."""

    length: Quantity = given_input(
        "L", "moving length", "length", about="stretch that moves", least=0, span=("0 ft", "3000 ft")
    )
    alpha: Quantity = given_input(
        "alpha",
        "thermal expansion",
        "expansion",
        about="thermal expansion of that stretch",
        least=0,
        span=("0 /F", "100e-6 /F"),
    )
    temperature_range: Quantity = given_input(
        "dT",
        "temperature range",
        "temperature_difference",
        about="from coldest to hottest",
        least=0,
        span=("0 F", "400 F"),
    )


def thermal_movement(inputs: MovementInputs) -> Working:
    """Change of length, in inches or millimeters. Raises Refused for what is below zero."""
    working = WorkingBuilder(inputs.rows())
    working.step("dL", "change of length", "L * alpha * dT", "in" if inputs.system == "ip" else "mm")
    source = find_source("joint_width_course").quote("length times expansion times range")
    return working.build("thermal-movement", "dL", (source,), NOTES)


PROVIDER = provide(
    "Thermal movement",
    MovementInputs,
    thermal_movement,
    example="length=30ft alpha=3.6e-6/F temperature_range=45F",
)
