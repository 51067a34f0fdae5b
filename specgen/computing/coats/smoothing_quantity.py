"""Smoothing coat for the elevations of a project and its mockup: area over spreading rate, for each coat."""

from specgen.computing.coats._areas import READS, add_net_area, area_rows, tell_allowance
from specgen.computing.whole_containers import count_pails
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Description
from specgen.model.working import InputRow, Working
from specgen.resolving.provider import Ask, Provider

SOURCES = (Source(Kind.COMPUTED, "area over spreading rate, times the coats"),)
NO_WASTE = "Excludes waste."


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
            *_order_rows(project, volume),
        )
    )
    add_net_area(working, area)
    working.step("Q", "smoothing, all coats", "A / C * n", volume)
    result, notes = "Q", [tell_allowance(areas), NO_WASTE]
    if "R" in working.known:
        result, notes = "P", notes[:1]
        working.step("P", "smoothing with reserve", "Q * (1 + R / 100)", volume)
    if "p" not in working.known:
        return working.build("smoothing-quantity", result, SOURCES, tuple(notes))
    pails = count_pails(working, result, volume)
    return working.build("smoothing-quantity", result, SOURCES, (pails, *notes), secondary_results=("N",))


def _order_rows(project: Description, volume: str) -> tuple[InputRow, ...]:
    """What an order is made from, where the coating system gives it: the reserve and the pail."""
    reserve, pail = project.smoothing.get("reserve"), project.smoothing.get("pail")
    rows = (InputRow("R", "reserve", float(reserve), "%", "smoothing.reserve"),) if reserve is not None else ()
    return (*rows, InputRow("p", "pail", pail.number(volume), volume, "smoothing.pail")) if pail is not None else rows


PROVIDER = Provider(
    name="smoothing-quantity",
    title="Smoothing coat quantity",
    each=(),
    compute=for_project,
    reads=("smoothing.coats", "smoothing.spreading_rate", "elevations", *READS),
    buy="N",
    order=28,
)
