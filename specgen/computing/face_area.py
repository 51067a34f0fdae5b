"""The area of an elevation within its edge, and what of it is no wall that is coated."""

from fractions import Fraction

from specgen.model.outline import read_outline
from specgen.model.roof_line import find_roof_line
from specgen.model.typed_views import Elevation, WaterDetail, root_of

# Water details that cover wall, each with the field of its height: what lies flat on it, and what is left open above a
# roof. A ledge touches the wall by its edge.
_COVERING = {"deck_ledger": "height", "penetration": "height", "roof_below": "clearance"}


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
    sizes = [one.width.amount * one.height.amount for one in elevation.openings]
    sizes += [one.width.amount * one[high].amount for one in covering for high in name_heights(one)]
    return sum(sizes, Fraction(0))


def name_heights(detail: WaterDetail) -> tuple[str, ...]:
    """The fields that tell how high the wall is that a water detail covers: of a roof, above and below its roofing."""
    thick = detail.kind == "roof_below" and detail.get("thickness") is not None
    return (_COVERING[detail.kind], *(["thickness"] if thick else []))


def list_covering(elevation: Elevation) -> list[WaterDetail]:
    """The water details that cover wall by a width and a height that are given; a roof by the line at which it does."""
    project = elevation.project
    if not project.is_given(("details",)):
        return []
    marks = project.find_referring(("details",), "elevation", elevation.mark)
    details = [root_of(elevation).details[mark] for mark in marks]
    # A detail that does not say on which elevation it is may be on any.
    here = [one for one in details if one.get("elevation") == elevation and one.get("kind") in _COVERING]
    return [one for one in here if _has_size(one)]


def _has_size(detail: WaterDetail) -> bool:
    high = detail.get(_COVERING[detail.kind])
    if detail.kind == "roof_below" and find_roof_line(detail.project, detail.mark) is None:
        return False
    return detail.get("width") is not None and high is not None and high.amount > 0
