"""Wet film that dries to the film wanted, as it is read with a comb while spraying."""

from dataclasses import replace
from typing import Any

from specgen.computing.coats._coats import MOST_WATER, SECTIONS, WET_FILM, refuse_film, water_notes
from specgen.computing.guards import refuse_share
from specgen.model.project import View
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider


def wet_film(
    dft: Quantity, volume_solids: Any, thinning: Any = 0, most_water: Any = None, system: str = "ip"
) -> Working:
    """Wet film of one coat, in mil or µm, the film before water beside it; solids and water in percent.

    Source: `WET_FILM`. Raises Refused.
    """
    refuse_film(dft)
    refuse_share(volume_solids=volume_solids)
    notes = water_notes(thinning, most_water)
    unit = "mil" if system == "ip" else "um"
    made = Sum(
        (
            Given("D", "dry film", dft.number(unit), unit),
            Given("V_s", "volume solids", float(volume_solids), "%"),
            Given("T", "water added, of the coating", float(thinning), "%"),
        )
    )
    made.step("W_0", "wet film before water", "D / (V_s / 100)", unit)
    wet = made.step("W", "wet film", "W_0 * (1 + T / 100)", unit)
    return Working("wet-film", made.given, tuple(made.steps), wet, unit, (WET_FILM,), notes, "", ("W_0",))


def for_coat(coat: View, ask: Ask) -> Working:
    """The wet film of the primer or the gloss of a project, with the most water it may be thinned by."""
    water = coat.max_water
    made = wet_film(coat.dry_film, coat.volume_solids, water, water, coat.project.system)
    return replace(made, notes=(*made.notes, MOST_WATER))


PROVIDER = Provider(
    "wet-film",
    "Wet film of a coat",
    (),
    for_coat,
    sections=SECTIONS,
    reads=("*.dry_film", "*.volume_solids", "*.max_water"),
    direct=wet_film,
    units=("mil", "um"),
    order=20,
    origins={
        "V_s": "*.volume_solids",
        "D": "*.dry_film",
        "T": "*.max_water",
    },
    keys=(
        Key("dft", "length", "dry film of one coat"),
        Key("volume_solids", "percent", "solids by volume of the coating as supplied"),
        Key("thinning", "percent", "water added, by volume of the coating", "0%"),
        Key("most_water", "percent", "most water the coating source allows", ""),
    ),
)
