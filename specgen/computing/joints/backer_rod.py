"""Backer rod of a joint: wider than the joint, and the next diameter that is kept in stock."""

from fractions import Fraction
from typing import Any

from specgen.computing.guards import refuse_negative_percent, refuse_none_of
from specgen.model.project import View
from specgen.model.source import PRACTICE, Kind, Source
from specgen.model.working import Given, Sum, Working
from specgen.quantities.format import printed
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask, Key, Provider

SOURCES = (
    Source(Kind.PUBLISHED, "UFGS 07 24 00, page 21: closed-cell rod 25 % wider than the joint"),
    PRACTICE,
)
# Diameters in stock, in inches and in millimeters; common practice, no source.
STOCK = {
    "in": tuple(Fraction(eighths, 8) for eighths in (2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16, 20, 24, 32)),
    "mm": tuple(map(Fraction, (6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100))),
}
NOTES = (
    "Stock diameters are common practice, no source: ask what the supplier keeps.",
    "25 % is for closed-cell rod; softer rod is taken thicker, from memory 40 to 50 % for open cell.",
)


def backer_rod(width: Quantity, oversize: Any = 25, system: str = "ip") -> Working:
    """Least diameter of the rod, in inches or millimeters, the next stock size beside it; `oversize` in percent.

    Raises Refused.
    """
    refuse_none_of(width=width)
    refuse_negative_percent(oversize=oversize)
    unit = "in" if system == "ip" else "mm"
    made = Sum(
        (
            Given("W", "width of the joint", width.number(unit), unit),
            Given("o", "rod over the width", float(oversize), "%", source=SOURCES[0] if oversize == 25 else None),
        )
    )
    least = made.step("d", "least diameter", "W * (1 + o / 100)", unit)
    gap = _step_in_stock(width.to(unit) * (1 + Fraction(oversize) / 100), STOCK[unit])
    if gap is None:
        told = f"No rod in stock is that thick; the thickest is {printed(Quantity.of(STOCK[unit][-1], unit), unit)}."
        return Working("backer-rod", made.given, tuple(made.steps), least, unit, SOURCES, (told, *NOTES))
    # Every stock diameter is a multiple of its distance from the one below it, so rounding up by that leads to it.
    made.give(Given("r", "step to this stock diameter", float(gap), unit, source=PRACTICE))
    made.step("d_s", "next stock diameter", "ceil(d / r - 1e-9) * r", unit)
    return Working("backer-rod", made.given, tuple(made.steps), least, unit, SOURCES, NOTES, "", ("d_s",))


def _step_in_stock(least: Fraction, stock: tuple[Fraction, ...]) -> Fraction | None:
    """How far the thinnest stock diameter that is thick enough lies above the one below it."""
    below = Fraction(0)
    for size in stock:
        if size >= least:
            return size - below
        below = size
    return None


def for_joint(joint: View, ask: Ask) -> Working:
    """The rod of a joint of the project, by the width it is given."""
    return backer_rod(joint.width, system=joint.project.system)


PROVIDER = Provider(
    "backer-rod",
    "Diameter of the backer rod",
    ("joints",),
    for_joint,
    reads=("joints.*.width",),
    direct=backer_rod,
    units=("in", "mm"),
    order=30,
    origins={"W": "joints.*.width"},
    keys=(
        Key("width", "length", "width of the joint"),
        Key("oversize", "percent", "rod over the width", "25%"),
    ),
)
