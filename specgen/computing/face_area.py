"""The area of an elevation within its edge, openings included."""

from fractions import Fraction

from specgen.model.outline import read_outline
from specgen.model.typed_views import Elevation


def gross_area(elevation: Elevation) -> Fraction:
    """Square meters within the outline, width by height where none is given; raises Absent for a missing size."""
    points = elevation.get("outline")
    if points:
        return read_outline(points, elevation.width, elevation.height).area
    return elevation.width.amount * elevation.height.amount


def cut_off(elevation: Elevation) -> Fraction:
    """Square meters of width by height that lie beyond the outline. Raises Absent."""
    return elevation.width.amount * elevation.height.amount - gross_area(elevation)
