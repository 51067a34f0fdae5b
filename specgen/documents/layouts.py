"""The layouts of the elevations, each looked up once: that in force, and those offered beside it."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks
from specgen.model.absence import Absent
from specgen.model.layout import ElevationLayout, Panel, Point
from specgen.model.value_text import long_date
from specgen.quantities.quantity import Quantity, round_quantity


def list_layouts(context: DocumentContext) -> dict[str, tuple[ElevationLayout, ...]]:
    """The layouts of each elevation by its mark, the one in force first; without those that are not known."""
    return context.remember(_gather)


def list_laid_out(context: DocumentContext) -> tuple[ElevationLayout, ...]:
    """The layouts in force, in the order of their elevations; without those that are not known."""
    return tuple(layouts[0] for layouts in list_layouts(context).values())


def _gather(context: DocumentContext) -> dict[str, tuple[ElevationLayout, ...]]:
    return dict(_find_layouts(context))


def _find_layouts(context: DocumentContext) -> Iterator[tuple[str, tuple[ElevationLayout, ...]]]:
    for mark in list_marks(context, "elevations"):
        try:
            yield mark, context.resolve(("elevations", mark), "layouts")
        except Absent:
            continue


def find_missing(context: DocumentContext, mark: str) -> Absent | None:
    """The field that the layout of an elevation waits for; None where it is known."""
    try:
        context.resolve(("elevations", mark), "layouts")
    except Absent as absent:
        return absent
    return None


def tell_length(context: DocumentContext, meters: Fraction) -> DisplayValue:
    """A length of a layout as the field of an opening's place prints it."""
    field = context.project.schema.node(("elevations", "*", "openings", "*", "x")).field
    length = Quantity(meters, "length", "ft" if context.first == "ip" else "m")
    return DisplayValue(context.text(length, field), length)


def tell_area(context: DocumentContext, square_meters: Fraction) -> DisplayValue:
    """An area of a layout, rounded for print alone."""
    unit = "ft2" if context.first == "ip" else "m2"
    area = round_quantity(Quantity.of(Quantity(square_meters, "area", "m2").to(unit), unit))
    return DisplayValue(context.text(area, None), area)


def tell_consent(context: DocumentContext, mark: str) -> str:
    """That the architect is to agree to the panels of an elevation under the minimum side, or the letter that does."""
    letter = context.project.get(("elevations", mark, "layout", "consent"))
    if letter is None:
        return "architect's consent required"
    day = letter.get("issued_on")
    return f"agreed {long_date(day)}, {letter.mark}" if day else f"agreed, {letter.mark}"


def tell_legs(context: DocumentContext, panel: Panel) -> list[Any]:
    """How high a panel of four corners with a sloped edge is at both sides; empty for any other."""
    outline, left, right = panel.outline, panel.x, panel.x + panel.width
    heights = {side: abs(to - y) for side in (left, right) for (x, y), (at, to) in _sides(outline) if x == at == side}
    if panel.is_rectangle or len(outline) != 4 or len(heights) != 2:
        return []
    told = (tell_length(context, heights[side]) for side in (left, right))
    return [", ", next(told), " high at the left, ", next(told), " at the right"]


def _sides(outline: tuple[Point, ...]) -> Iterator[tuple[Point, Point]]:
    return pairwise((*outline, outline[0]))


def name_shape(panel: Panel) -> str:
    """`rectangle`, `L-shaped`, `around an opening`: what a panel looks like."""
    outline = panel.outline
    corners = len(outline)
    slopes = any(x != at and y != to for (x, y), (at, to) in _sides(outline))
    told = f"{corners} corners"
    shape = f"{told}, sloped edge" if slopes else {4: "rectangle", 6: "L-shaped", 8: "notched"}.get(corners, told)
    return f"{shape}, around an opening" if panel.holes else shape
