"""Width of the strip at the corners of a wall where wind pulls hardest: zone 5 of ASCE 7-16."""

from specgen.computing.guards import refuse_none_of
from specgen.computing.wind import _wind
from specgen.model.project import View
from specgen.model.working import Given, Sum, Working
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

LOW = (
    "Up to 60 ft (18.3 m): 10 % of the least width or 0.4 of the height, the smaller; not below 4 % of the width or "
    "3 ft (0.9 m)."
)
HIGH = (
    "Over 60 ft (18.3 m): 10 % of the least width, not below 3 ft (0.9 m). The pressures of such a wall are the "
    "engineer's."
)


def wind_corner_strip(least_width: Quantity, height: Quantity, system: str) -> Working:
    """Width of zone 5 at each corner, in ft or m; source: `_wind.RECALLED`. Raises Refused for no building."""
    refuse_none_of(least_width=least_width, height=height)
    unit = "ft" if system == "ip" else "m"
    made = Sum(
        (
            Given("B", "least width of the building", least_width.number(unit), unit),
            Given("h", "mean roof height", height.number(unit), unit),
            Given("a_m", "least width of the strip", Quantity.of(3, "ft").number(unit), unit, source=_wind.RECALLED),
        )
    )
    high = more(height, _wind.HIGHEST)
    if high:
        made.step("a_1", "share of the building", "0.1 * B", unit)
        made.step("a_2", "least by the width", "a_m", unit)
    else:
        made.step("a_1", "smaller share of the building", "min(0.1 * B, 0.4 * h)", unit)
        made.step("a_2", "least by the width", "max(0.04 * B, a_m)", unit)
    found = made.step("a", "width of the corner strip", "max(a_1, a_2)", unit)
    notes = (HIGH if high else LOW, "The strip runs up both sides of every outside corner.")
    return Working("wind-corner-strip", made.given, tuple(made.steps), found, unit, (_wind.RECALLED,), notes)


def for_project(project: View, ask: Ask) -> Working:
    """The strip at the corners of the project's building."""
    building = project.building
    system = project.project.system
    return wind_corner_strip(building.least_plan_width, building.mean_roof_height, system)


PROVIDER = Provider(
    "wind-corner-strip",
    "Corner strip of higher wind pressure",
    (),
    for_project,
    reads=("building.least_plan_width", "building.mean_roof_height"),
    direct=wind_corner_strip,
    units=("ft", "m"),
    order=20,
    origins={
        "B": "building.least_plan_width",
        "h": "building.mean_roof_height",
    },
    keys=(
        Key("least_width", "length", "least plan width of the building"),
        Key("height", "length", "mean roof height"),
    ),
)
