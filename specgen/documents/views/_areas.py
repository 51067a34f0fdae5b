"""Net areas of elevations and of walls, as tables print them."""

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from specgen.documents.context import OF_A_SUM, DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.model.absence import Absent
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity, round_quantity


def sum_areas(context: DocumentContext, elevations: Sequence[str]) -> Any:
    """The net area of these elevations together, or the first field that is missing for it."""
    total = Fraction(0)
    for mark in elevations:
        try:
            working = context.resolve(("elevations", mark), "elevation-area")
        except Absent as absent:
            return name_missing(context, absent)
        assert isinstance(working, Working)
        total += working.quantity.amount
    unit = "ft2" if context.first == "ip" else "m2"
    area = round_quantity(Quantity.of(Quantity(total, "area", "m2").to(unit), unit))
    return DisplayValue(context.text(area, None), area, OF_A_SUM) if elevations else ""


def name_missing(context: DocumentContext, absent: Absent) -> DisplayValue:
    """An open value with the field or collection it waits for: `[pending: openings]`."""
    node = context.project.schema.node(absent.path)
    label = node.field.label if node.field else node.collection.label if node.collection else absent.path[-1]
    said = label[:1].lower() + label[1:] if label[1:2].islower() else label
    return DisplayValue(f"[pending: {said}]", open=True)
