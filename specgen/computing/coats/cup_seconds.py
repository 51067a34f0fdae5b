"""Time of a viscosity cup for a paint of known viscosity: `cup_viscosity` turned round."""

from specgen.computing.coats._cups import (
    Cup,
    band,
    constants,
    cup_of,
    notes,
    refuse_viscosity,
    sources,
    spread_given,
    time_by,
)
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Key, Provider


def cup_seconds(cup: Cup, viscosity: Quantity) -> Working:
    """Time of the cup in seconds; source: that of the cup. Raises Refused outside the cup's range."""
    wanted = viscosity.number("mm2/s")
    refuse_viscosity(cup, wanted)
    made = Sum((Given("nu", "viscosity", wanted, "mm2/s"), *constants(cup), *spread_given(cup)))
    found = made.step("t", f"time of the cup {cup.title}", time_by(cup, "nu"), "s")
    beside = band(made, cup, "t")
    return Working("cup-seconds", made.given, tuple(made.steps), found, "s", sources(cup), notes(cup), "", beside)


PROVIDER = Provider(
    "cup-seconds",
    "Cup time from a viscosity",
    (),
    None,
    direct=lambda cup, viscosity, system: cup_seconds(cup, viscosity),
    units=("s", "s"),
    keys=(
        Key("cup", "word", "such as zahn_4, ford_4, iso_4, shell_3", read=cup_of),
        Key("viscosity", "viscosity", "kinematic viscosity of the paint, mm²/s", bare="mm2/s"),
    ),
)
