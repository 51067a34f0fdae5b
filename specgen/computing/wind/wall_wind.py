"""Design wind pressure on the cladding of a low wall, ASCE 7-16 chapter 30."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from specgen.computing.guards import refuse_beyond, refuse_none_of, refuse_outside
from specgen.computing.wind import _wind
from specgen.model.absence import Absent
from specgen.model.problem import refuse
from specgen.model.project import View
from specgen.model.source import PROJECT
from specgen.model.working import Given, Sum, Working
from specgen.quantities.comparison import more
from specgen.quantities.format import printed
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

ENGINEER = "Given by the engineer at allowable level; it comes before a computed one."


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """What a wall pressure is computed from; `area` is the effective area of the part, `system` ip (psf) or si."""

    speed: Quantity
    height: Quantity
    exposure: str
    area: Quantity
    zone: str = "4"
    direction: str = "outward"
    level: str = "allowable"
    standard: str = "asce_7_16"
    enclosure: str = "enclosed"
    topographic: Fraction | float = 1
    system: str = "ip"


def wall_wind(inputs: Inputs) -> Working:
    """Pressure on a wall in psf or kPa, minus outward; source: `_wind.WALLS`. Raises Refused outside the method."""
    _refuse(inputs)
    unit = "psf" if inputs.system == "ip" else "kPa"
    made = Sum((*_given(inputs), *_wind.area_given(inputs.area, inputs.system), *_allowable(inputs)))
    _wind.velocity(made, unit)
    _wind.area(made)
    strength = _wind.pressure(made, inputs.direction, int(inputs.zone), unit)
    found = made.known[strength]
    if inputs.level == "allowable":
        found = made.step("p_a", "pressure at allowable level", f"F * {strength}", unit)
    sources = (_wind.WALLS, _wind.RECALLED)
    least = "least pressure" if abs(made.known["p"]) < made.known["p_m"] else ""
    return Working("wall-wind", made.given, tuple(made.steps), found, unit, sources, _wind.NOTES, least, ("q_h",))


def _refuse(inputs: Inputs) -> None:
    refuse_none_of(height=inputs.height)
    if more(inputs.height, _wind.HIGHEST):
        raise refuse(
            f"height is {printed(inputs.height, inputs.height.unit)}, and the method ends at 60 ft (18.3 m)",
            "take the engineer's own pressures for a higher building",
        )
    refuse_beyond("speed", inputs.speed, _wind.SLOWEST, _wind.FASTEST)
    refuse_outside("topographic", inputs.topographic, 1, 3)
    if inputs.area < _wind.LEAST_AREA:
        raise refuse(f"area is {printed(inputs.area, inputs.area.unit)}", "it is 1 sq ft (0.093 m²) or more")


def _given(inputs: Inputs) -> tuple[Given, ...]:
    return _wind.velocity_given(
        inputs.speed, inputs.height, inputs.exposure, float(inputs.topographic), inputs.enclosure, inputs.system
    )


def _allowable(inputs: Inputs) -> tuple[Given, ...]:
    share = Given("F", "share of the wind at allowable level", 0.6, "", source=_wind.RECALLED)
    return (share,) if inputs.level == "allowable" else ()


def for_elevation(elevation: View, ask: Ask) -> Working:
    """The outward pressure on the board of an elevation at allowable level: the greater pull of zones 4 and 5.

    The engineer's outward pressure comes first; where the method does not reach and there is none, it is Absent.
    """
    system = elevation.project.system
    given = elevation.get("design_pressure_outward")
    if given is not None:
        return _engineers(elevation, given, system)
    root: Any = elevation.project.root()
    speed, height = root.site.wind_speed, root.building.mean_roof_height
    if any(_wind.reasons_against(speed, height, root.code.wind_standard)):
        raise Absent((*elevation.path, "design_pressure_outward"))
    return _board(
        Inputs(
            speed=speed,
            height=height,
            exposure=root.site.exposure,
            area=_wind.BOARD_AREA,
            enclosure=root.building.enclosure,
            topographic=float(root.site.topographic_factor),
            system=system,
        )
    )


def _engineers(elevation: View, outward: Quantity, system: str) -> Working:
    unit = "psf" if system == "ip" else "kPa"
    inward = elevation.get("design_pressure_inward")
    given = [Given("P_o", "engineer's pressure, outward", outward.number(unit), unit, ENGINEER)]
    if inward is not None:
        given.append(Given("P_i", "engineer's pressure, inward", inward.number(unit), unit, ENGINEER))
    made = Sum(tuple(given))
    found = made.step("p_a", "pull outward", "0 - P_o", unit)
    notes = (ENGINEER, _wind.NOTES[-1])
    return Working("wall-wind", made.given, tuple(made.steps), found, unit, (PROJECT,), notes, "engineer")


def _board(inputs: Inputs) -> Working:
    """The pressures on a board in both zones; the greater pull is the result."""
    unit = "psf" if inputs.system == "ip" else "kPa"
    made = Sum((*_given(inputs), *_wind.area_given(inputs.area, inputs.system), *_allowable(inputs)))
    _wind.velocity(made, unit)
    _wind.area(made)
    for direction, zone, tail in (("outward", 4, "_4"), ("outward", 5, "_5"), ("inward", 4, "_n")):
        strength = _wind.pressure(made, direction, zone, unit, tail)
        named = "inward" if tail == "_n" else f"zone {zone}, outward"
        made.step(f"p_a{tail}", f"allowable level, {named}", f"F * {strength}", unit)
    found = made.step("p_a", "greater pull of the two zones", "min(p_a_4, p_a_5)", unit)
    notes = (
        *_wind.NOTES,
        "A board is loaded over 10 sq ft (0.93 m²) or less, the worst of the chart. Studs and their fasteners carry "
        "larger areas and are the engineer's.",
    )
    # With the least pressure in force in both zones neither is worse.
    governs = "zone 5" if made.known["p_a_5"] < made.known["p_a_4"] else "least pressure"
    sources = (_wind.WALLS, _wind.RECALLED)
    beside = ("q_h", "p_a_4", "p_a_5", "p_a_n")
    return Working("wall-wind", made.given, tuple(made.steps), found, unit, sources, notes, governs, beside)


PROVIDER = Provider(
    "wall-wind",
    "Wind pressure on the wall",
    ("elevations",),
    for_elevation,
    reads=(
        "site.wind_speed",
        "site.exposure",
        "site.topographic_factor",
        "building.mean_roof_height",
        "building.enclosure",
        "code.wind_standard",
    ),
    direct=lambda **keys: wall_wind(Inputs(**keys)),
    units=("psf", "kPa"),
    order=10,
    origins={
        "V": "site.wind_speed",
        "K_e": "taken as 1, which the standard allows",
        "h": "building.mean_roof_height",
        "A": "one insulation board, or less",
    },
    keys=(
        Key("speed", "speed", "basic wind speed of the maps"),
        Key("height", "length", "mean roof height, up to 60 ft"),
        Key("exposure", "word", "exposure category: B, C or D", choices=tuple(_wind.EXPOSURES)),
        Key("area", "area", "effective area of the part, 1 sq ft or more"),
        Key("zone", "word", "4 in the field of the wall, 5 in the strip at a corner", "4", ("4", "5")),
        Key("direction", "word", "outward or inward", "outward", ("outward", "inward")),
        Key("level", "word", "allowable or strength", "allowable", ("allowable", "strength")),
        Key("standard", "word", "wind standard", "asce_7_16", _wind.STANDARDS),
        Key("enclosure", "word", "enclosed or partially_enclosed", "enclosed", tuple(_wind.ENCLOSURES)),
        Key("topographic", "number", "topographic factor, 1 to 3", "1.0"),
    ),
)
