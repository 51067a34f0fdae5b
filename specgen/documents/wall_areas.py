"""The elevations of a wall, and their area."""

from fractions import Fraction
from typing import Any, cast

from specgen.computing.face_area import gross_area
from specgen.documents.context import DocumentContext
from specgen.documents.marks import list_marks
from specgen.model.absence import Absent
from specgen.quantities.quantity import Quantity, round_quantity


def tell_gross_area(context: DocumentContext, mark: str) -> str:
    """`1360 sq ft`, of the elevations of a wall, openings not taken off; empty while a size is missing."""
    elevations = cast(Any, context.project.root()).elevations
    mine = list_elevations(context, mark)
    try:
        amount = sum((gross_area(elevations[one]) for one in mine), start=Fraction(0))
    except Absent:
        return ""
    unit = "ft2" if context.first == "ip" else "m2"
    area = round_quantity(Quantity.of(Quantity(amount, "area", "m2").to(unit), unit))
    return context.text(area, None) if mine else ""


def list_elevations(context: DocumentContext, mark: str) -> list[str]:
    """The marks of the elevations of a wall."""
    return context.remember(_group_elevations).get(mark, [])


def _group_elevations(context: DocumentContext) -> dict[str, list[str]]:
    """The marks of the elevations by that of their wall."""
    walls: dict[str, list[str]] = {}
    for one in list_marks(context, "elevations"):
        wall = context.project.get(("elevations", one, "wall"))
        if wall is not None:
            walls.setdefault(wall.mark, []).append(one)
    return walls
