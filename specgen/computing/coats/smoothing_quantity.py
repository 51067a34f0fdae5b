"""Smoothing coat for the elevations of a project and its mockup: area over spreading rate, for each coat."""

from specgen.computing.coats._areas import READS, add_net_area, area_rows, tell_left_out
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Description
from specgen.model.working import InputRow, Working
from specgen.resolving.provider import Ask, Provider

SOURCES = (Source(Kind.COMPUTED, "area over spreading rate, times the coats"),)


def for_project(project: Description, ask: Ask) -> Working | None:
    """The smoothing of all coats, in gallons or liters; none where nothing is smoothed. Raises Absent."""
    coats = project.smoothing.coats
    if not coats:
        return None
    ip = project.project.system == "ip"
    area, volume = ("ft2", "gal") if ip else ("m2", "L")
    rate = f"{area}/{volume}"
    spread = project.smoothing.spreading_rate.number(rate)
    areas = area_rows(project, area, ask)
    working = WorkingBuilder(
        (
            *areas,
            InputRow("C", "spreading rate, each coat", spread, rate, "smoothing.spreading_rate"),
            InputRow("n", "coats", float(coats), "", "smoothing.coats"),
        )
    )
    add_net_area(working, area)
    working.step("Q", "smoothing, all coats", "A / C * n", volume)
    return working.build("smoothing-quantity", "Q", SOURCES, (f"Excludes waste. {tell_left_out(areas)}",))


PROVIDER = Provider(
    name="smoothing-quantity",
    title="Smoothing coat quantity",
    each=(),
    compute=for_project,
    reads=("smoothing.coats", "smoothing.spreading_rate", "elevations", *READS),
    order=28,
)
