"""Time of a viscosity cup for a paint of known viscosity: `cup_viscosity` turned round."""

from specgen.computing.coats import _cups
from specgen.computing.inputs import Inputs, given_input, option_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity


class SecondsInputs(Inputs):
    """A cup and the viscosity of a paint."""

    cup: _cups.Cup = option_input("such as zahn_4, ford_4, iso_4, shell_3", read=_cups.read_cup)
    viscosity: Quantity = given_input(
        "nu",
        "viscosity",
        "viscosity",
        about="kinematic viscosity of the paint, mm²/s",
        bare="mm2/s",
        span=("0.1 mm2/s", "100000 mm2/s"),
    )


def cup_seconds(inputs: SecondsInputs) -> Working:
    """Time of the cup in seconds. Raises Refused outside the cup's range."""
    cup = inputs.cup
    _cups.require_viscosity(cup, inputs.viscosity.number("mm2/s"))
    working = WorkingBuilder((*inputs.rows(), *_cups.formula_rows(cup), *_cups.spread_rows(cup)))
    working.step("t", f"time of the cup {cup.title}", _cups.express_time(cup, "nu"), "s")
    beside = _cups.add_band(working, cup, "t")
    return working.build("cup-seconds", "t", _cups.list_sources(cup), _cups.tell_notes(cup), secondary_results=beside)


PROVIDER = provide(
    "Cup time from a viscosity",
    SecondsInputs,
    cup_seconds,
    example="cup=zahn_5 viscosity=777cSt",
)
