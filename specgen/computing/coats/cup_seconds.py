"""Time of a viscosity cup for a paint of known viscosity: `cup_viscosity` turned round."""

from specgen.computing.coats._cups import (
    Cup,
    add_band,
    cup_of,
    formula_rows,
    list_sources,
    require_viscosity,
    spread_rows,
    tell_notes,
    time_by,
)
from specgen.computing.inputs import Inputs, declare_inputs, given_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity


@declare_inputs
class SecondsInputs(Inputs):
    """A cup and the viscosity of a paint."""

    cup: Cup = given_input("", "", "word", about="such as zahn_4, ford_4, iso_4, shell_3", read=cup_of)
    viscosity: Quantity = given_input(
        "nu", "viscosity", "viscosity", about="kinematic viscosity of the paint, mm²/s", bare="mm2/s"
    )


def cup_seconds(inputs: SecondsInputs) -> Working:
    """Time of the cup in seconds. Raises Refused outside the cup's range."""
    cup = inputs.cup
    require_viscosity(cup, inputs.viscosity.number("mm2/s"))
    working = WorkingBuilder((*inputs.rows(), *formula_rows(cup), *spread_rows(cup)))
    working.step("t", f"time of the cup {cup.title}", time_by(cup, "nu"), "s")
    beside = add_band(working, cup, "t")
    return working.build("cup-seconds", "t", list_sources(cup), tell_notes(cup), secondary_results=beside)


PROVIDER = provide("cup-seconds", "Cup time from a viscosity", SecondsInputs, cup_seconds, in_project=False)
