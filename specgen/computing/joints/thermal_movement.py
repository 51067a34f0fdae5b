"""Change of length of a stretch of wall by a change of temperature."""

from specgen.computing.guards import refuse_negative
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Key, Provider

SOURCES = (
    Source(
        Kind.PUBLISHED,
        "Cornell University, ARCH 262, sealant joint assignment, fall 2007: length times expansion times range",
    ),
)
NOTES = (
    "The stretch is taken to be free at both ends; what holds it makes stress of the movement it prevents.",
    "Moisture and movements of the building are not in this sum; joint-width adds them.",
)


def thermal_movement(length: Quantity, alpha: Quantity, temperature_range: Quantity, system: str = "ip") -> Working:
    """Change of length, in inches or millimeters; source: `SOURCES`. Raises Refused for what is below zero."""
    refuse_negative(length=length, alpha=alpha, temperature_range=temperature_range)
    unit, degree, per = ("in", "F", "/F") if system == "ip" else ("mm", "C", "/C")
    made = Sum(
        (
            Given("L", "length that moves", length.number(unit), unit),
            Given("alpha", "thermal expansion", alpha.number(per), per),
            Given("dT", "temperature range", temperature_range.number(f"{degree} apart"), degree),
        )
    )
    change = made.step("dL", "change of length", "L * alpha * dT", unit)
    return Working("thermal-movement", made.given, tuple(made.steps), change, unit, SOURCES, NOTES)


PROVIDER = Provider(
    "thermal-movement",
    "Thermal movement",
    (),
    None,
    direct=thermal_movement,
    units=("in", "mm"),
    keys=(
        Key("length", "length", "stretch that moves"),
        Key("alpha", "expansion", "thermal expansion of that stretch"),
        Key("temperature_range", "temperature_difference", "from coldest to hottest"),
    ),
)
