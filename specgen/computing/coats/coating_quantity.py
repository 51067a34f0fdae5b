"""Coating for an area: all coats as supplied, the reserve, the water and the whole pails beside it."""

from fractions import Fraction

from specgen.computing.coats import _coats
from specgen.computing.coats._areas import READS, add_net_area, area_rows, tell_allowance
from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.whole_containers import count_pails
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import Kind, Source
from specgen.model.typed_views import Gloss, Primer, root_of
from specgen.model.working import InputRow, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask

RESERVE = Source(Kind.MEMORY, "a reserve of the same batch is kept for recoating")
NO_AREA = Quantity.of(0, "ft2")
ORDERING = "Measure the returns before ordering."


class CoatingInputs(Inputs):
    """An area, or the `areas` of a project, a coating, and its pail; shares, water and reserve in percent."""

    area: Quantity = given_input("A", "area to be coated", "area", least=0, span=("0 ft2", "5000000 ft2"))
    dft: Quantity = _coats.film_input("dry film of one coat")
    volume_solids: Fraction = _coats.solids_input()
    transfer_efficiency: Fraction = _coats.efficiency_input()
    loss: Fraction = _coats.loss_input()
    coats: Fraction = given_input("n", "coats", "number", "*.coats", "coats of that film", default=1, span=("1", "10"))
    thinning: Fraction = _coats.thinning_input()
    reserve: Fraction = given_input(
        "R", "reserve", "percent", "*.reserve", "kept from the same batch", default=0, least=0
    )
    pail: Quantity | None = given_input(
        "p", "pail", "volume", "*.pail", "what the coating is sold in, such as 5 gal", default=None, above=0
    )
    most_water: Fraction | None = _coats.most_water_input()
    areas: tuple[InputRow, ...] = given_input("", "", "area", default=(), key=False)


def coating_quantity(inputs: CoatingInputs) -> Working:
    """Coating before water, all coats with the reserve, in gallons or liters. Raises Refused."""
    notes = _refuse(inputs) + _coats.tell_rounding(inputs.system)
    area, volume = ("ft2", "gal") if inputs.system == "ip" else ("m2", "L")
    working = WorkingBuilder(_rows(inputs))
    if inputs.areas:
        add_net_area(working, area)
    working.step("C", "practical spreading rate", "k * V_s / 100 * E / 100 * (1 - l / 100) / D", f"{area}/{volume}")
    working.step("Q_1", "coating for one coat", "A / C", volume)
    working.step("Q", "coating sprayed", "Q_1 * n", volume)
    working.step("P", "coating with reserve", "Q * (1 + R / 100)", volume)
    working.step("W", "thinning water", "Q * T / 100", volume)
    sources = (_coats.COVERAGE, RESERVE) if inputs.reserve else (_coats.COVERAGE,)
    if inputs.pail is None:
        return working.build("coating-quantity", "P", sources, notes, secondary_results=("W",))
    pails = count_pails(working, "P", volume)
    return working.build("coating-quantity", "P", sources, (pails, *notes), secondary_results=("N", "W"))


def _refuse(inputs: CoatingInputs) -> tuple[str, ...]:
    """What is said of the water; raises Refused for figures that have no sense."""
    _coats.require_loss(inputs.loss)
    _coats.require_whole_coats(inputs.coats)
    return _coats.tell_water(inputs.thinning, inputs.most_water)


def _rows(inputs: CoatingInputs) -> tuple[InputRow, ...]:
    areas = inputs.areas or inputs.rows("area")
    coating = inputs.rows("dft", "volume_solids", "transfer_efficiency", "loss", "coats", "reserve", "thinning", "pail")
    return (*areas, _coats.coverage_row(inputs.system), *coating)


def for_coat(coat: Primer | Gloss, ask: Ask) -> Working:
    """The primer or the gloss of a project for the net area of its elevations and its mockup, with returns."""
    areas = area_rows(root_of(coat), "ft2" if coat.project.system == "ip" else "m2", ask)
    working = coating_quantity(CoatingInputs.from_project(coat, ask, area=NO_AREA, areas=areas))
    return working._replace(notes=(*working.notes, _coats.MOST_WATER, f"{tell_allowance(areas)} {ORDERING}"))


PROVIDER = provide(
    "Coating quantity",
    CoatingInputs,
    coating_quantity,
    for_member=for_coat,
    sections=_coats.SECTIONS,
    reads=("elevations", *READS),
    columns=("C", "Q_1", "Q", "P", "N", "W"),
    buy="N",
    order=30,
    example="area=6000sqft dft=1.5mil volume_solids=38% transfer_efficiency=35%",
)
