"""Time of one viscosity cup told in the seconds of another, with the spread between laboratories."""

from specgen.computing.coats._cups import (
    Cup,
    add_band,
    cup_of,
    formula_rows,
    list_sources,
    require_time,
    require_viscosity,
    spread_rows,
    tell_notes,
    time_by,
    time_row,
    viscosity_by,
)
from specgen.computing.inputs import Inputs, declare_inputs, given_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity

GUESS = "A time carried over from another cup is a first guess; the accepted mockup decides."


@declare_inputs
class CupsInputs(Inputs):
    """A cup that was read, its time, and the cup whose time is wanted."""

    cup: Cup = given_input("", "", "word", about="the cup that was read", read=cup_of)
    seconds: Quantity = given_input("", "", "time", about="time until the stream breaks", bare="s")
    to: Cup = given_input("", "", "word", about="the cup whose time is wanted", read=cup_of)


def cup_to_cup(inputs: CupsInputs) -> Working:
    """Time of the cup `to` in seconds for the same paint. Raises Refused outside the range of either cup.

    The band is the wider spread of the two cups, laid on the result; source: those of the cups.
    """
    cup, to, seconds = inputs.cup, inputs.to, inputs.seconds
    require_time(cup, seconds)
    require_viscosity(to, cup.viscosity(seconds.number("s")))
    wider = max((cup, to), key=lambda one: one.spread or 0)
    constants = (*formula_rows(cup, "_1"), *formula_rows(to, "_2"), *spread_rows(wider))
    working = WorkingBuilder((time_row(cup, "t_1", seconds), *constants))
    working.step("nu", "viscosity", viscosity_by(cup, "t_1", "_1"), "mm2/s")
    working.step("t_2", f"time of the cup {to.title}", time_by(to, "nu", "_2"), "s")
    beside = add_band(working, wider, "t_2")
    notes = (*tell_notes(cup, to), GUESS)
    return working.build("cup-to-cup", "t_2", list_sources(cup, to), notes, secondary_results=beside)


PROVIDER = provide(
    "cup-to-cup", "One viscosity cup in the seconds of another", CupsInputs, cup_to_cup, in_project=False
)
