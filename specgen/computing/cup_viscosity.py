"""Kinematic viscosity of a paint from the time it takes to run out of a viscosity cup."""

from ..vocabulary.project import Absent, View
from ..vocabulary.provider import Ask, Key, Provider
from ..vocabulary.quantity import Quantity
from ..vocabulary.working import Given, Sum, Working
from ._cups import (
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


def for_project(project: View, ask: Ask) -> Working:
    """The viscosities at both ends of the cup window of primer and gloss; the result is the first of them.

    A coat with a cup that has no formula, or a time outside its range, is left out and named in a note; Absent names
    the value that cannot be used where no coat is left.
    """
    coats = [(name, getattr(project, name)) for name in ("primer", "gloss")]
    faults = {name: fault for name, coat in coats if (fault := _fault(coat)) is not None}
    fit = [(name, coat, CUPS[coat.cup]) for name, coat in coats if name not in faults]
    if not fit:
        raise Absent(next(iter(faults.values())))
    made = Sum(tuple(given for name, coat, cup in fit for given in _given(name, coat, cup)))
    for name, _, cup in fit:
        tail = f"_{name[0]}"
        for end, word in (("s", "shortest"), ("l", "longest")):
            expression = viscosity_by(cup, f"t{tail}{end}", tail)
            made.step(f"nu{tail}{end}", f"{name} at its {word} time", expression, "mm2/s")
    first, *others = made.steps
    cups = [cup for _, _, cup in fit]
    left_out = tuple(f"The {name} is left out: its cup or its time has no formula here." for name in faults)
    told = (*notes(*cups), *left_out)
    beside = tuple(step.symbol for step in others)
    return Working(
        "cup-viscosity", made.given, tuple(made.steps), first.value, "mm2/s", sources(*cups), told, "", beside
    )


def _fault(coat: View) -> tuple[str, ...] | None:
    """The path of the value of a coat that no formula takes, None where all fit; raises Absent."""
    if coat.cup not in CUPS:
        return (*coat.path, "cup")
    cup = CUPS[coat.cup]
    for field in ("cup_least", "cup_most"):
        if not cup.least <= getattr(coat, field).to("s") <= cup.most:
            return (*coat.path, field)
    return None


def _given(name: str, coat: View, cup: Cup) -> tuple[Given, ...]:
    tail = f"_{name[0]}"
    return (
        Given(f"t{tail}s", f"shortest time of the {name}, {cup.title}", coat.cup_least.number("s"), "s"),
        Given(f"t{tail}l", f"longest time of the {name}, {cup.title}", coat.cup_most.number("s"), "s"),
        *constants(cup, tail),
    )


PROVIDER = Provider(
    "cup-viscosity",
    "Viscosity from a cup time",
    (),
    for_project,
    reads=("primer.cup", "primer.cup_least", "primer.cup_most", "gloss.cup", "gloss.cup_least", "gloss.cup_most"),
    direct=lambda cup, seconds, system: cup_viscosity(cup, seconds),
    units=("mm2/s", "mm2/s"),
    group="coats",
    order=40,
    origins={
        "t_ps": "primer.cup_least",
        "t_pl": "primer.cup_most",
        "t_gs": "gloss.cup_least",
        "t_gl": "gloss.cup_most",
    },
    keys=(
        Key("cup", "word", "such as zahn_4, ford_4, iso_4, shell_3", read=cup_of),
        Key("seconds", "time", "time until the stream breaks", bare="s"),
    ),
)
