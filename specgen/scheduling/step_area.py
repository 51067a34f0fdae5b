"""The area of an elevation that a step covers: all of it, or the zones that take heavy mesh."""

from fractions import Fraction
from itertools import pairwise

from specgen.computing.face_area import gross_area, openings_area
from specgen.model.absence import read_all
from specgen.model.outline import Stretch, read_outline
from specgen.model.typed_views import Elevation
from specgen.quantities.quantity import Quantity

Band = tuple[Fraction, Fraction]  # from and to, in meters above the lower edge of the elevation
_HEAVY = ("high", "ultra_high")  # classes of zones


def find_step_area(elevation: Elevation, step: str) -> Quantity:
    """The net area that a step covers, exactly; that of heavy mesh within its zones, where they are given.

    Raises Absent.
    """
    bands = list_heavy_bands(elevation) if step == "heavy_mesh" else []
    if bands:
        area = sum((_find_area_within(elevation, band) for band in bands), Fraction(0))
        return Quantity(area, "area", "ft2")
    gross, open_ = read_all(lambda: gross_area(elevation), lambda: openings_area(elevation))
    return Quantity(gross - open_, "area", "ft2")


def list_heavy_bands(elevation: Elevation) -> list[Band]:
    """The bands of an elevation that take heavy mesh, clear of one another; none where no zone is given in full."""
    base = elevation.get("base_above_grade")
    above = Fraction(0) if base is None else base.amount
    edges = [
        (zone.get("from").amount - above, zone.get("to").amount - above)
        for zone in (elevation.impact_zones if elevation.impact_zones.is_given() else ())
        if zone.get("class") in _HEAVY and zone.get("from") is not None and zone.get("to") is not None
    ]
    bands: list[Band] = []
    for low, high in sorted(edges):
        low = max(low, bands[-1][1] if bands else Fraction(0))
        if low < high:
            bands.append((low, high))
    return bands


def _find_area_within(elevation: Elevation, band: Band) -> Fraction:
    """Square meters of wall within a band: what the outline holds, less the openings as far as they reach into it."""
    low, high = band
    points = elevation.get("outline")
    if points:
        outline = read_outline(points, elevation.width, elevation.height)
        inside = sum((_cut(one, band) for one in outline.top), Fraction(0))
        gross = inside - sum((_cut(one, band) for one in outline.bottom), Fraction(0))
    else:
        gross = elevation.width.amount * max(min(high, elevation.height.amount) - low, Fraction(0))
    return gross - sum(
        (_find_open(one.width, one.get("y"), one.height, band) for one in elevation.openings), Fraction(0)
    )


def _find_open(width: Quantity, y: Quantity | None, height: Quantity, band: Band) -> Fraction:
    """What an opening takes of a band; nothing where it does not say how high it lies."""
    if y is None:
        return Fraction(0)
    low, high = band
    return width.amount * max(min(high, y.amount + height.amount) - max(low, y.amount), Fraction(0))


def _cut(stretch: Stretch, band: Band) -> Fraction:
    """The area below a straight edge and within a band: straight between the places at which it crosses its ends."""
    (x0, y0), (x1, y1) = stretch
    places = {x0, x1}
    for level in band:
        if min(y0, y1) < level < max(y0, y1):
            places.add(x0 + (level - y0) * (x1 - x0) / (y1 - y0))
    heights = [(x, min(max(stretch.at(x), band[0]), band[1]) - band[0]) for x in sorted(places)]
    return sum(((b - a) * (low + high) / 2 for (a, low), (b, high) in pairwise(heights)), Fraction(0))
