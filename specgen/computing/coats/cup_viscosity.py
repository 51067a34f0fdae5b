"""Kinematic viscosity of a paint from the time it takes to run out of a viscosity cup."""

from specgen.computing.coats import _cups
from specgen.computing.coats._coats import SECTIONS
from specgen.computing.inputs import Inputs, option_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.problem import refuse
from specgen.model.typed_views import Gloss, Primer
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask


class ViscosityInputs(Inputs):
    """A cup and its time."""

    cup: _cups.Cup = option_input("such as zahn_4, ford_4, iso_4, shell_3", read=_cups.read_cup)
    seconds: Quantity = _cups.time_input()


def cup_viscosity(inputs: ViscosityInputs) -> Working:
    """Kinematic viscosity in mm²/s. Raises Refused outside the cup's range."""
    cup = inputs.cup
    _cups.require_time(cup, inputs.seconds)
    working = WorkingBuilder(
        (_cups.time_row(cup, "t", inputs.seconds), *_cups.formula_rows(cup), *_cups.spread_rows(cup))
    )
    working.step("nu", "viscosity", _cups.express_viscosity(cup, "t"), "mm2/s")
    beside = _cups.add_band(working, cup, "t")
    for end, symbol, name in zip(beside, ("nu_s", "nu_l"), ("least", "greatest"), strict=False):
        # A short time of a thin paint lies below the constant of its cup; no viscosity is below zero.
        working.step(
            symbol, f"{name} viscosity of another laboratory", f"max({_cups.express_viscosity(cup, end)}, 0)", "mm2/s"
        )
        beside += (symbol,)
    return working.build(
        "cup-viscosity", "nu", _cups.list_sources(cup), _cups.tell_notes(cup), secondary_results=beside
    )


def for_coat(coat: Primer | Gloss, ask: Ask) -> Working:
    """The viscosities at both ends of the cup window of a coat, in mm²/s; the result is that at the shortest time.

    Raises Refused for a cup that has no formula and for a window outside the range of its cup.
    """
    if coat.cup not in _cups.CUPS:
        raise refuse(f"no formula is known for the cup of the {coat.mark}", "judge it by the manufacturer's window")
    cup = _cups.CUPS[coat.cup]
    ends = (("t_s", "shortest", coat.cup_least, "*.cup_least"), ("t_l", "longest", coat.cup_most, "*.cup_most"))
    for _, _, time, _ in ends:
        _cups.require_time(cup, time)
    times = (InputRow(sign, f"{word} time, {cup.title}", time.number("s"), "s", at) for sign, word, time, at in ends)
    working = WorkingBuilder((*times, *_cups.formula_rows(cup)))
    working.step("nu_s", "viscosity at the shortest time", _cups.express_viscosity(cup, "t_s"), "mm2/s")
    working.step("nu_l", "viscosity at the longest time", _cups.express_viscosity(cup, "t_l"), "mm2/s")
    return working.build(
        "cup-viscosity", "nu_s", _cups.list_sources(cup), _cups.tell_notes(cup), secondary_results=("nu_l",)
    )


PROVIDER = provide(
    "Cup viscosity",
    ViscosityInputs,
    cup_viscosity,
    for_member=for_coat,
    sections=SECTIONS,
    reads=("*.cup", "*.cup_least", "*.cup_most"),
    columns=("nu_s", "nu_l"),
    upper="nu_l",
    order=40,
    example="cup=zahn_4 seconds=30s",
)
