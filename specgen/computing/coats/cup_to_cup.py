"""Time of one viscosity cup told in the seconds of another, with the spread between laboratories."""

from specgen.computing.coats import _cups
from specgen.computing.inputs import Inputs, option_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity

GUESS = "A time carried over from another cup is a first guess; the accepted mockup decides."


class CupsInputs(Inputs):
    """A cup that was read, its time, and the cup whose time is wanted."""

    cup: _cups.Cup = option_input("the cup that was read", read=_cups.read_cup)
    seconds: Quantity = _cups.time_input()
    to: _cups.Cup = option_input("the cup whose time is wanted", read=_cups.read_cup)


def cup_to_cup(inputs: CupsInputs) -> Working:
    """Time of the cup `to` in seconds for the same paint. Raises Refused outside the range of either cup.

    The band is the wider spread of the two cups, laid on the result; source: those of the cups.
    """
    cup, to, seconds = inputs.cup, inputs.to, inputs.seconds
    _cups.require_time(cup, seconds)
    _cups.require_viscosity(to, cup.viscosity(seconds.number("s")))
    wider = max((cup, to), key=lambda one: one.spread or 0)
    constants = (*_cups.formula_rows(cup, "_1"), *_cups.formula_rows(to, "_2"), *_cups.spread_rows(wider))
    working = WorkingBuilder((_cups.time_row(cup, "t_1", seconds), *constants))
    working.step("nu", "viscosity", _cups.express_viscosity(cup, "t_1", "_1"), "mm2/s")
    working.step("t_2", f"time of the cup {to.title}", _cups.express_time(to, "nu", "_2"), "s")
    beside = _cups.add_band(working, wider, "t_2")
    notes = (*_cups.tell_notes(cup, to), GUESS)
    return working.build("cup-to-cup", "t_2", _cups.list_sources(cup, to), notes, secondary_results=beside)


PROVIDER = provide(
    "One viscosity cup in the seconds of another",
    CupsInputs,
    cup_to_cup,
    example="cup=zahn_2 seconds=40s to=ford_4",
)
