"""Width of the strip at the corners of a wall where wind pulls hardest: zone 5 of ASCE 7."""

from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.wind import _wind
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import InputRow, Working
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity
from specgen.standards import find_source

LOW = (
    "Up to {60 ft|18.3 m}: 10 % of the least width or 0.4 of the height, the smaller; not below 4 % of the width or "
    "{3 ft|0.9 m}. Where the roof slopes less than 10 degrees the height is that of the eave."
)
HIGH = (
    "Over {60 ft|18.3 m}: 10 % of the least width, not below {3 ft|0.9 m}. The pressures of such a wall are the "
    "engineer's."
)
# Least width over which the figure bounds the strip by the height, under a flat roof; from memory.
WIDEST = Quantity.of(300, "ft")
WIDE = (
    "Least width over {300 ft|90 m}: under a roof sloped 7° or less the strip is at most 0.8 of the height; on any "
    "other roof it keeps its width."
)


class StripInputs(Inputs):
    """The size of a building."""

    least_width: Quantity = given_input(
        "B",
        "least plan width",
        "distance",
        "building.least_plan_width",
        "least plan width of the building",
        above=0,
    )
    height: Quantity = given_input("h", "mean roof height", "distance", "building.mean_roof_height", above=0)


def wind_corner_strip(inputs: StripInputs) -> Working:
    """Width of zone 5 at each corner, in ft or m; source: row `wind_strip`. Raises Refused for no building."""
    unit = "ft" if inputs.system == "ip" else "m"
    high = more(inputs.height, _wind.HIGHEST)
    source = _wind.MEMORY if high else find_source("wind_strip")
    least = InputRow("a_m", "minimum corner zone", _wind.LEAST_STRIP.number(unit), unit, source=source)
    working = WorkingBuilder((*inputs.rows(), least))
    if high:
        working.step("a_1", "share of the building", "0.1 * B", unit)
        working.step("a_2", "minimum zone width", "a_m", unit)
    else:
        working.step("a_1", "lesser building dimension", "min(0.1 * B, 0.4 * h)", unit)
        working.step("a_2", "minimum zone width", "max(0.04 * B, a_m)", unit)
    working.step("a", "corner zone width", "max(a_1, a_2)", unit)
    notes: tuple[str, ...] = (HIGH if high else LOW, "The zone runs full height on both sides of each outside corner.")
    if high or not more(inputs.least_width, WIDEST):
        return working.build("wind-corner-strip", "a", (source,), notes)
    working.step("a_f", "width under a flat roof", "min(a, 0.8 * h)", unit)
    return working.build("wind-corner-strip", "a", (source,), (*notes, WIDE), secondary_results=("a_f",))


PROVIDER = provide(
    "Corner zone width",
    StripInputs,
    wind_corner_strip,
    order=20,
    example="least_width=64ft height=26ft",
)
