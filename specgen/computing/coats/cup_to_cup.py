"""Time of one viscosity cup told in the seconds of another, with the spread between laboratories."""

from specgen.computing.coats._cups import (
    Cup,
    band,
    constants,
    cup_of,
    notes,
    refuse_time,
    refuse_viscosity,
    sources,
    spread_given,
    time_by,
    viscosity_by,
)
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Key, Provider


def cup_to_cup(cup: Cup, seconds: Quantity, to: Cup) -> Working:
    """Time of the cup `to` in seconds for the same paint. Raises Refused outside the range of either cup.

    The band is the wider spread of the two cups, laid on the result; source: those of the cups.
    """
    refuse_time(cup, seconds)
    refuse_viscosity(to, cup.viscosity(seconds.number("s")))
    wider = max((cup, to), key=lambda one: one.spread or 0)
    time = Given("t_1", f"time of the cup {cup.title}", seconds.number("s"), "s")
    made = Sum((time, *constants(cup, "_1"), *constants(to, "_2"), *spread_given(wider)))
    made.step("nu", "viscosity", viscosity_by(cup, "t_1", "_1"), "mm2/s")
    found = made.step("t_2", f"time of the cup {to.title}", time_by(to, "nu", "_2"), "s")
    beside = band(made, wider, "t_2")
    told = (*notes(cup, to), "A time carried over from another cup is a first guess; the accepted mockup decides.")
    return Working("cup-to-cup", made.given, tuple(made.steps), found, "s", sources(cup, to), told, "", beside)


PROVIDER = Provider(
    "cup-to-cup",
    "One viscosity cup in the seconds of another",
    (),
    None,
    direct=lambda cup, seconds, to, system: cup_to_cup(cup, seconds, to),
    units=("s", "s"),
    keys=(
        Key("cup", "word", "the cup that was read", read=cup_of),
        Key("seconds", "time", "time until the stream breaks", bare="s"),
        Key("to", "word", "the cup whose time is wanted", read=cup_of),
    ),
)
