"""Area that can be given its two gloss coats in one day: the second follows when the first is dry to touch."""

from dataclasses import replace
from fractions import Fraction

from specgen.computing.guards import refuse_negative, refuse_none_of
from specgen.model.field import Path, below
from specgen.model.project import View
from specgen.model.source import PRACTICE, Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

SOURCES = (
    Source(Kind.COMPUTED, "an area A takes max(A / r, touch-dry) and A / r: the second coat goes over it as the first"),
    PRACTICE,
)
NOTES = ("The second coat starts where the first was started, when that is dry to touch: common practice, no source.",)
SET_UP = 1.0  # hours of each shift for setting up and cleaning; common practice, no source
COVERED = {"shade_cloth", "tent"}


def day_area(rate: Quantity, touch_dry: Quantity, hours: Quantity, system: str = "ip") -> Working:
    """Area that two gloss coats allow in one day, in sq ft or m², the hours of its passes beside it. Raises Refused."""
    refuse_negative(hours=hours)
    area = _area(system)
    return _sum(Sum((*_given(rate, touch_dry, area), Given("H", "hours of the day", hours.number("h"), "h"))), area)


def _area(system: str) -> str:
    return "ft2" if system == "ip" else "m2"


def _given(rate: Quantity, touch_dry: Quantity, area: str, origin: str = "") -> tuple[Given, ...]:
    refuse_none_of(rate=rate)
    refuse_negative(touch_dry=touch_dry)
    return (
        Given("r", "output of one pass", rate.number(f"{area}/h"), f"{area}/h", origin),
        Given("t", "touch-dry time", touch_dry.number("h"), "h"),
    )


def _sum(made: Sum, area: str) -> Working:
    # As long as a pass takes longer than drying, the day is two passes; a shorter day is drying and one pass.
    most = made.step("A", "area of the day", "r * max(min(H / 2, H - t), 0)", area)
    made.step("H_1", "hours of each pass", "A / r", "h")
    made.step("H_2", "second pass starts after", "max(H_1, t)", "h")
    made.step("H_w", "wait between the passes", "H_2 - H_1", "h")
    known = made.known
    governs = "spraying" if known["H"] >= 2 * known["t"] else "drying of the first coat"
    none = () if most else ("The first coat is not dry to touch within these hours: no second coat in one day.",)
    beside = ("H_1", "H_2", "H_w")
    return Working("day-area", made.given, tuple(made.steps), most, area, SOURCES, none + NOTES, governs, beside)


def for_elevation(elevation: View, ask: Ask) -> Working:
    """The area of a day on an elevation, by the slowest gloss crew, the shift and the elevation's own shade."""
    project = elevation.project.root()
    crew, rate = _slowest(project)
    touch_dry = Quantity.of(Fraction(project.gloss.touch_dry_hours), "h")
    area = _area(elevation.project.system)
    made = Sum((*_given(rate, touch_dry, area, below(crew, "rates.gloss")), *_hours(project, elevation)))
    light = "min(S, S_o)" if "S_o" in made.known else "S"
    made.step("H", "hours of the day", f"max({light} - u, 0)", "h")
    told = [f"Output is that of {crew[-1]}.", "Daylight is not looked at."]
    if "S_o" in made.known and made.known["S_o"] < made.known["S"]:
        told.append("The hours are those of the elevation's own shade in its shortest month.")
    if project.gloss.coats != 2:
        told.append(f"The sum is for two coats; this project has {project.gloss.coats}.")
    found = _sum(made, area)
    return replace(found, notes=(*found.notes, *told))


def _hours(project: View, elevation: View) -> tuple[Given, ...]:
    """The shift, what is kept of it for setting up, and the hours of own shade where these bound the day."""
    shade = None if _is_covered(elevation) else _shortest_shade(elevation)
    own = below(elevation.path, "shade_hours")
    return (
        Given("S", "shift", float(project.schedule.shift_hours), "h", "schedule.shift_hours"),
        *(() if shade is None else (Given("S_o", "own shade, shortest month", float(shade), "h", own),)),
        Given("u", "kept for setting up and cleaning", SET_UP, "h", source=PRACTICE),
    )


def _slowest(project: View) -> tuple[Path, Quantity]:
    """The crew that sprays the gloss and its output; of several the slowest, so that every one of them can do it."""
    crews = [crew for crew in project.crews if crew.get("rates.gloss") is not None or "gloss" in crew.steps]
    rate, path = min((crew.rates["gloss"], crew.path) for crew in crews or list(project.crews))
    return path, rate


def _is_covered(elevation: View) -> bool:
    """Whether cloth or a tent shades the elevation, so that its own shade does not bound the day."""
    shades = elevation.project.members.get(("shade",), ())
    views = [elevation.project.view(("shade", mark)) for mark in shades]
    return any(view.get("elevation") == elevation and view.get("kind") in COVERED for view in views)


def _shortest_shade(elevation: View) -> Fraction | None:
    """The hours of own shade in the month that has least; None where none are told."""
    spans: dict[str, Fraction] = {}
    for entry in elevation.shade_hours:
        start, end = entry["from"], entry.to
        span = Fraction(60 * (end.hour - start.hour) + end.minute - start.minute, 60)
        spans[entry.month] = spans.get(entry.month, Fraction(0)) + max(span, Fraction(0))
    return min(spans.values(), default=None)


PROVIDER = Provider(
    "day-area",
    "Area of a day with two gloss coats",
    ("elevations",),
    for_elevation,
    reads=("crews", "gloss.touch_dry_hours", "schedule.shift_hours"),
    direct=day_area,
    units=("ft2", "m2"),
    order=50,
    origins={"t": "gloss.touch_dry_hours"},
    keys=(
        Key("rate", "area_rate", "output of the sprayer in one pass, such as 300 sq ft/h"),
        Key("touch_dry", "time", "first coat to second, in hours", bare="h"),
        Key("hours", "time", "usable hours of the day", bare="h"),
    ),
)
