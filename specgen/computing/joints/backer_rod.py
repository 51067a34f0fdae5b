"""Backer rod of a joint: wider than the joint, and the next diameter that is kept in stock."""

from fractions import Fraction

from specgen.computing.inputs import Inputs, given_input, provide
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import if_given
from specgen.model.capacity import Check, Comparison, at_most
from specgen.model.source import PRACTICE
from specgen.model.typed_views import Joint
from specgen.model.working import InputRow, Working
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask

# Diameters in stock, in inches and in millimeters; common practice, no source.
STOCK = {
    "in": tuple(Fraction(eighths, 8) for eighths in (2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16, 20, 24, 32)),
    "mm": tuple(map(Fraction, (6, 8, 10, 12, 15, 20, 25, 30, 32, 40, 50, 60, 80, 100))),
}
NOTES = (
    "Stock diameters: common practice, no source; confirm with the supplier.",
    "For closed-cell rod.",
)


class RodInputs(Inputs):
    """The joint, and how much thicker its rod is, in percent."""

    width: Quantity = given_input("W", "joint width", "length", "joints.*.width", above=0)
    oversize: Fraction = given_input(
        "o",
        "rod oversize",
        "percent",
        limit="joint.rod_oversize",
        says="closed-cell rod {oversize} wider than the joint",
        least=0,
        span=("0", "100"),
    )


def backer_rod(inputs: RodInputs) -> Working:
    """Least diameter of the rod, in inches or millimeters, the next stock size beside it. Raises Refused."""
    unit = "in" if inputs.system == "ip" else "mm"
    working = WorkingBuilder(inputs.rows())
    working.step("d", "minimum diameter", "W * (1 + o / 100)", unit)
    sources, notes = (inputs.limit_source("oversize"), PRACTICE), NOTES
    gap = _step_in_stock(inputs.width.to(unit) * (1 + Fraction(inputs.oversize) / 100), STOCK[unit])
    if gap is None:
        thickest = format_quantity(Quantity.of(STOCK[unit][-1], unit), unit)
        none = f"No rod in stock is that thick; the thickest is {thickest}."
        return working.build("backer-rod", "d", sources, (none, *notes))
    # Every stock diameter is a multiple of its distance from the one below it, so rounding up by that leads to it.
    working.add_inputs(InputRow("r", "stock diameter increment", float(gap), unit, source=PRACTICE))
    working.step("d_s", "stock diameter", "ceil(d / r - 1e-9) * r", unit)
    return working.build("backer-rod", "d", sources, notes, secondary_results=("d_s",))


def _step_in_stock(least: Fraction, stock: tuple[Fraction, ...]) -> Fraction | None:
    """How far the thinnest stock diameter that is thick enough lies above the one below it."""
    below = Fraction(0)
    for size in stock:
        if size >= least:
            return size - below
        below = size
    return None


def compare_rod(joint: Joint, ask: Ask) -> Comparison | None:
    """The least diameter against the rod given; none where tape stands in for the rod."""
    taped = if_given(lambda: joint.bond_break_tape)
    return None if taped else at_most(ask("backer-rod").quantity, joint.rod_diameter)


PROVIDER = provide(
    "Backer rod diameter",
    RodInputs,
    backer_rod,
    each=("joints",),
    checks=(Check("required rod", "rod given", ("SLT-03e",), compare_rod, "joints.*.rod_diameter"),),
    columns=("d", "d_s"),
    buy="d_s",
    order=30,
    example="width=3/4in",
)
