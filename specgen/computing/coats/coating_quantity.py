"""Coating for an area: all coats as supplied, the reserve, the water and the whole pails beside it."""

from dataclasses import dataclass, replace
from typing import Any

from specgen.computing.coats._areas import READS, gross_and_openings
from specgen.computing.coats._coats import (
    COVERAGE,
    MOST_WATER,
    SECTIONS,
    coverage,
    refuse_film,
    refuse_loss,
    refuse_part_of_a_coat,
    rounded,
    water_notes,
)
from specgen.computing.guards import refuse_negative, refuse_negative_percent, refuse_none_of, refuse_share
from specgen.computing.whole_containers import whole
from specgen.model.problem import refuse
from specgen.model.project import View
from specgen.model.source import Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.quantities.format import printed
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

RESERVE = Source(Kind.MEMORY, "a reserve of the same batch is kept for recoating")


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """What the quantity of a coating is computed from; shares, water and reserve in percent.

    `openings` are taken off `area`; `pail` is what the coating is sold in; `system` is ip (gallons) or si (liters).
    """

    area: Quantity
    dft: Quantity
    volume_solids: Any
    transfer_efficiency: Any
    loss: Any = 0
    coats: Any = 1
    thinning: Any = 0
    reserve: Any = 0
    pail: Quantity | None = None
    most_water: Any = None
    openings: Quantity | None = None
    system: str = "ip"


def coating_quantity(inputs: Inputs) -> Working:
    """Coating before water, all coats with the reserve, in gallons or liters; source: `COVERAGE`. Raises Refused."""
    water = _refuse(inputs)
    _, _, area, volume = coverage(inputs.system)
    made = Sum(_given(inputs))
    if inputs.openings is not None:
        made.step("A", "net area", "A_w - A_o", area)
    made.step("C", "practical spreading rate", "k * V_s / 100 * E / 100 * (1 - l / 100) / D", f"{area}/{volume}")
    made.step("Q_1", "coating for one coat", "A / C", volume)
    made.step("Q", "coating to be sprayed", "Q_1 * n", volume)
    paint = made.step("P", "coating with reserve", "Q * (1 + R / 100)", volume)
    made.step("W", "water for what is sprayed", "Q * T / 100", volume)
    pails = () if inputs.pail is None else (whole(made, "N", "pails", "P", "p"),)
    beside = ("W",) if inputs.pail is None else ("N", "W")
    notes = pails + water + rounded(inputs.system)
    sources = (COVERAGE, RESERVE) if inputs.reserve else (COVERAGE,)
    return Working("coating-quantity", made.given, tuple(made.steps), paint, volume, sources, notes, "", beside)


def _refuse(inputs: Inputs) -> tuple[str, ...]:
    """What is said of the water; raises Refused for figures that have no sense."""
    refuse_negative(area=inputs.area, openings=inputs.openings)
    if inputs.openings is not None and inputs.openings > inputs.area:
        openings, area = printed(inputs.openings, inputs.openings.unit), printed(inputs.area, inputs.area.unit)
        raise refuse(f"openings of {openings} are more than the elevations of {area}", "look at the sizes")
    refuse_film(inputs.dft)
    refuse_none_of(pail=inputs.pail)
    refuse_share(volume_solids=inputs.volume_solids, transfer_efficiency=inputs.transfer_efficiency)
    refuse_loss(inputs.loss)
    refuse_part_of_a_coat(inputs.coats)
    refuse_negative_percent(reserve=inputs.reserve)
    return water_notes(inputs.thinning, inputs.most_water)


def _given(inputs: Inputs) -> tuple[Given, ...]:
    constant, film, area, volume = coverage(inputs.system)
    given = [Given("A", "area to be coated", inputs.area.number(area), area)]
    if inputs.openings is not None:
        given = [
            Given("A_w", "elevations, width by height", inputs.area.number(area), area),
            Given("A_o", "openings", inputs.openings.number(area), area),
        ]
    given += [
        constant,
        Given("D", "dry film of one coat", inputs.dft.number(film), film),
        Given("V_s", "volume solids", float(inputs.volume_solids), "%"),
        Given("E", "transfer efficiency", float(inputs.transfer_efficiency), "%"),
        Given("l", "further loss", float(inputs.loss), "%"),
        Given("n", "coats", float(inputs.coats), ""),
        Given("R", "reserve", float(inputs.reserve), "%"),
        Given("T", "water added, of the coating", float(inputs.thinning), "%"),
    ]
    if inputs.pail is not None:
        given.append(Given("p", "pail", inputs.pail.number(volume), volume))
    return tuple(given)


def for_coat(coat: View, ask: Ask) -> Working:
    """The primer or the gloss of a project for the net area of its elevations; the faces of joints are not in it."""
    gross, openings = gross_and_openings(coat.project.root())
    figures = Inputs(
        area=gross,
        openings=openings,
        dft=coat.dry_film,
        volume_solids=coat.volume_solids,
        transfer_efficiency=coat.transfer_efficiency,
        coats=coat.coats,
        thinning=coat.max_water,
        most_water=coat.max_water,
        reserve=coat.reserve,
        pail=coat.pail,
        system=coat.project.system,
    )
    made = coating_quantity(figures)
    return replace(made, notes=(*made.notes, MOST_WATER, "The sides of aesthetic joints and returns are not counted."))


PROVIDER = Provider(
    "coating-quantity",
    "Quantity of a coating",
    (),
    for_coat,
    sections=SECTIONS,
    reads=(
        *(f"*.{name}" for name in ("dry_film", "volume_solids", "transfer_efficiency", "coats", "max_water")),
        "*.reserve",
        "*.pail",
        "elevations",
        *READS,
    ),
    direct=lambda **keys: coating_quantity(Inputs(**keys)),
    units=("gal", "L"),
    order=30,
    origins={
        "l": "none is counted",
        "A_w": "width by height, all elevations together",
        "A_o": "width by height, all openings together",
        "D": "*.dry_film",
        "V_s": "*.volume_solids",
        "E": "*.transfer_efficiency",
        "n": "*.coats",
        "R": "*.reserve",
        "T": "*.max_water",
        "p": "*.pail",
    },
    keys=(
        Key("area", "area", "area to be coated"),
        Key("dft", "length", "dry film of one coat"),
        Key("volume_solids", "percent", "solids by volume of the coating as supplied"),
        Key("transfer_efficiency", "percent", "share of the spray that stays on the wall"),
        Key("loss", "percent", "further loss: hoses, pails, wind", "0%"),
        Key("coats", "number", "coats of that film", "1"),
        Key("thinning", "percent", "water added, by volume of the coating", "0%"),
        Key("reserve", "percent", "kept from the same batch", "0%"),
        Key("pail", "volume", "what the coating is sold in, such as 5 gal", ""),
        Key("most_water", "percent", "most water the coating source allows", ""),
    ),
)
