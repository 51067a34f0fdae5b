"""Pressure of the standard atmosphere at an altitude, from below sea level to the top of the troposphere."""

from specgen.computing.air import _atmosphere
from specgen.model.project import View
from specgen.model.working import Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

SOURCES = (_atmosphere.SOURCE,)
NOTES = ("Absolute pressure of the standard day; a gauge reads 0 there. Weather moves it a little.",)


def air_pressure(altitude: Quantity, system: str = "ip") -> Working:
    """Absolute air pressure, in psi or kPa, at a height above sea level; source: `SOURCES`. Raises Refused."""
    made = Sum(_atmosphere.given(altitude, system))
    unit = "psi" if system == "ip" else "kPa"
    found = _atmosphere.pressure(made, unit)
    made.step("x", "share of the pressure at sea level", "P_a / P_0", "")
    return Working("air-pressure", made.given, tuple(made.steps), found, unit, SOURCES, NOTES, beside=("x",))


def for_project(project: View, ask: Ask) -> Working:
    """The air pressure at the site."""
    return air_pressure(project.site.altitude, project.project.system)


PROVIDER = Provider(
    "air-pressure",
    "Air pressure at an altitude, absolute",
    (),
    for_project,
    direct=air_pressure,
    reads=("site.altitude",),
    units=("psi", "kPa"),
    printed=False,  # what the site's air is worth stands with the air of the compressor
    keys=(Key("altitude", "length", "height above sea level, -16,400 ft to 36,000 ft"),),
)
