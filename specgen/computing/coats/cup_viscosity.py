"""Kinematic viscosity of a paint from the time it takes to run out of a viscosity cup."""

from specgen.computing.coats._coats import SECTIONS
from specgen.computing.coats._cups import (
    CUPS,
    Cup,
    band,
    constants,
    cup_of,
    notes,
    refuse_time,
    sources,
    spread_given,
    viscosity_by,
)
from specgen.model.problem import refuse
from specgen.model.project import View
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider


def cup_viscosity(cup: Cup, seconds: Quantity) -> Working:
    """Kinematic viscosity in mm²/s; source: that of the cup. Raises Refused outside the cup's range."""
    refuse_time(cup, seconds)
    time = Given("t", f"time of the cup {cup.title}", seconds.number("s"), "s")
    made = Sum((time, *constants(cup), *spread_given(cup)))
    found = made.step("nu", "viscosity", viscosity_by(cup, "t"), "mm2/s")
    beside = band(made, cup, "t")
    for end, symbol, name in zip(beside, ("nu_s", "nu_l"), ("least", "greatest"), strict=False):
        # A short time of a thin paint lies below the constant of its cup; no viscosity is below zero.
        made.step(symbol, f"{name} viscosity of another laboratory", f"max({viscosity_by(cup, end)}, 0)", "mm2/s")
        beside += (symbol,)
    return Working("cup-viscosity", made.given, tuple(made.steps), found, "mm2/s", sources(cup), notes(cup), "", beside)


def for_coat(coat: View, ask: Ask) -> Working:
    """The viscosities at both ends of the cup window of a coat, in mm²/s; the result is that at the shortest time.

    Raises Refused for a cup that has no formula and for a window outside the range of its cup.
    """
    if coat.cup not in CUPS:
        raise refuse(f"no formula is known for the cup of the {coat.mark}", "judge it by the window of its source")
    cup = CUPS[coat.cup]
    ends = (("t_s", "shortest", coat.cup_least), ("t_l", "longest", coat.cup_most))
    for _, _, time in ends:
        refuse_time(cup, time)
    times = tuple(Given(sign, f"{word} time, {cup.title}", time.number("s"), "s") for sign, word, time in ends)
    made = Sum((*times, *constants(cup)))
    found = made.step("nu_s", "viscosity at the shortest time", viscosity_by(cup, "t_s"), "mm2/s")
    made.step("nu_l", "viscosity at the longest time", viscosity_by(cup, "t_l"), "mm2/s")
    steps, origins = tuple(made.steps), sources(cup)
    return Working("cup-viscosity", made.given, steps, found, "mm2/s", origins, notes(cup), "", ("nu_l",))


PROVIDER = Provider(
    "cup-viscosity",
    "Viscosity from a cup time",
    (),
    for_coat,
    sections=SECTIONS,
    reads=("*.cup", "*.cup_least", "*.cup_most"),
    direct=lambda cup, seconds, system: cup_viscosity(cup, seconds),
    units=("mm2/s", "mm2/s"),
    order=40,
    origins={"t_s": "*.cup_least", "t_l": "*.cup_most"},
    keys=(
        Key("cup", "word", "such as zahn_4, ford_4, iso_4, shell_3", read=cup_of),
        Key("seconds", "time", "time until the stream breaks", bare="s"),
    ),
)
