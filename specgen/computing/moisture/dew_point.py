"""Dew point of air from its temperature and humidity; below freezing the frost point too."""

from specgen.computing.inputs import provide
from specgen.computing.moisture._dew import SOURCES, AirInputs, add_dew_and_frost, require_humidity, tell_frost
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import Working


def dew_point(inputs: AirInputs) -> Working:
    """Dew point over water, in °F or °C; the frost point over ice beside it below freezing. Raises Refused."""
    require_humidity(inputs)
    working = WorkingBuilder(inputs.rows())
    frost = add_dew_and_frost(working, "F" if inputs.system == "ip" else "C")
    notes = tell_frost(inputs.air, frost)
    return working.build("dew-point", "T_d", SOURCES, notes, secondary_results=("T_f",) if frost else ())


PROVIDER = provide(
    "Dew point, over water",
    AirInputs,
    dew_point,
    example="air=70F rh=50%",
)
