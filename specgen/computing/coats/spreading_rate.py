"""Area that a volume of coating covers at a dry film, in theory and in practice."""

from fractions import Fraction

from specgen.computing.coats import _coats
from specgen.computing.inputs import Inputs, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity

NOTES = ("Volume of coating as supplied, before water.",)


class SpreadingInputs(Inputs):
    """A coating and its dry film; shares in percent."""

    volume_solids: Fraction = _coats.solids_input()
    dft: Quantity = _coats.film_input("dry film")
    transfer_efficiency: Fraction = _coats.efficiency_input(default=100)
    loss: Fraction = _coats.loss_input()


def spreading_rate(inputs: SpreadingInputs) -> Working:
    """Practical area from a volume of coating, in sq ft/gal or m²/L, the theoretical beside it. Raises Refused."""
    _coats.require_loss(inputs.loss)
    unit = "ft2/gal" if inputs.system == "ip" else "m2/L"
    working = WorkingBuilder((_coats.coverage_row(inputs.system), *inputs.rows()))
    working.step("C_t", "theoretical spreading rate", "k * V_s / 100 / D", unit)
    working.step("C", "practical spreading rate", "C_t * E / 100 * (1 - l / 100)", unit)
    notes = NOTES + _coats.tell_rounding(inputs.system)
    return working.build("spreading-rate", "C", (_coats.COVERAGE,), notes, secondary_results=("C_t",))


PROVIDER = provide(
    "Spreading rate",
    SpreadingInputs,
    spreading_rate,
    sections=_coats.SECTIONS,
    columns=("C_t", "C"),
    order=10,
    example="volume_solids=65% dft=5mil",
)
