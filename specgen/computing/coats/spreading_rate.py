"""Area that a volume of coating covers at a dry film, in theory and in practice."""

from typing import Any

from specgen.computing.coats._coats import COVERAGE, SECTIONS, coverage, refuse_film, refuse_loss, rounded
from specgen.computing.guards import refuse_share
from specgen.model.project import View
from specgen.model.working import Given, Sum, Working
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

NOTES = ("Volume is that of the coating as supplied, before water.",)


def spreading_rate(
    volume_solids: Any, dft: Quantity, transfer_efficiency: Any = 100, loss: Any = 0, system: str = "ip"
) -> Working:
    """Practical area from a volume of coating, in sq ft/gal or m²/L, the theoretical beside it; shares in percent.

    Source: `COVERAGE`. Raises Refused.
    """
    refuse_share(volume_solids=volume_solids, transfer_efficiency=transfer_efficiency)
    refuse_film(dft)
    refuse_loss(loss)
    constant, film, area, volume = coverage(system)
    unit = f"{area}/{volume}"
    made = Sum(
        (
            constant,
            Given("V_s", "volume solids", float(volume_solids), "%"),
            Given("D", "dry film", dft.number(film), film),
            Given("E", "transfer efficiency", float(transfer_efficiency), "%"),
            Given("l", "further loss", float(loss), "%"),
        )
    )
    made.step("C_t", "theoretical spreading rate", "k * V_s / 100 / D", unit)
    practical = made.step("C", "practical spreading rate", "C_t * E / 100 * (1 - l / 100)", unit)
    notes = NOTES + rounded(system)
    return Working("spreading-rate", made.given, tuple(made.steps), practical, unit, (COVERAGE,), notes, "", ("C_t",))


def for_coat(coat: View, ask: Ask) -> Working:
    """The spreading rate of the primer or the gloss of a project, without further loss."""
    return spreading_rate(coat.volume_solids, coat.dry_film, coat.transfer_efficiency, system=coat.project.system)


PROVIDER = Provider(
    "spreading-rate",
    "Spreading rate of a coating",
    (),
    for_coat,
    sections=SECTIONS,
    reads=("*.volume_solids", "*.dry_film", "*.transfer_efficiency"),
    direct=spreading_rate,
    units=("ft2/gal", "m2/L"),
    order=10,
    origins={
        "l": "none is counted",
        "V_s": "*.volume_solids",
        "D": "*.dry_film",
        "E": "*.transfer_efficiency",
    },
    keys=(
        Key("volume_solids", "percent", "solids by volume of the coating as supplied"),
        Key("dft", "length", "dry film of one coat"),
        Key("transfer_efficiency", "percent", "share of the spray that stays on the wall", "100%"),
        Key("loss", "percent", "further loss: hoses, pails, wind", "0%"),
    ),
)
