"""The area of an elevation within its edge, and what of it is no wall that is coated."""

from fractions import Fraction

from specgen.model.outline import read_outline
from specgen.model.typed_views import Elevation, WaterDetail, root_of

# Water details that lie flat on the wall; a roof or ledge touches it by its edge.
_COVERING = ("deck_ledger", "penetration")


def gross_area(elevation: Elevation) -> Fraction:
    """Square meters within the outline, width by height where none is given; raises Absent for a missing size."""
    points = elevation.get("outline")
    if points:
        return read_outline(points, elevation.width, elevation.height).area
    return elevation.width.amount * elevation.height.amount


def cut_off(elevation: Elevation) -> Fraction:
    """Square meters of width by height that lie beyond the outline. Raises Absent."""
    return elevation.width.amount * elevation.height.amount - gross_area(elevation)


def openings_area(elevation: Elevation) -> Fraction:
    """Square meters of the openings, and of what covers the wall. Raises Absent."""
    covering = list_covering(elevation)
    sizes = (one.width.amount * one.height.amount for one in (*elevation.openings, *covering))
    return sum(sizes, start=Fraction(0))


def list_covering(elevation: Elevation) -> list[WaterDetail]:
    """The water details that cover wall by a width and a height that are given."""
    project = elevation.project
    if not project.is_given(("details",)):
        return []
    marks = project.find_referring(("details",), "elevation", elevation.mark)
    details = [root_of(elevation).details[mark] for mark in marks]
    # A detail that does not say on which elevation it is may be on any.
    here = [one for one in details if one.get("elevation") == elevation and one.get("kind") in _COVERING]
    return [one for one in here if one.get("width") and one.get("height")]
