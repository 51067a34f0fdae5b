"""Ledges of board that is added to the rasped face: bonded, cured, and rasped before the face is released."""

from datetime import timedelta
from fractions import Fraction
from typing import NamedTuple

from specgen.model.typed_views import Elevation, WaterDetail, root_of
from specgen.quantities.quantity import Quantity
from specgen.scheduling.crews import offer_work, require_rates
from specgen.scheduling.tasks import Offer

# What a ledge takes at the least of each work, whatever its area: common practice, no source.
LEAST = timedelta(hours=1)
_WORK = {"boards": "bonding", "rasp": "rasping its slope"}  # by the step whose output it is done at


class LedgeWork(NamedTuple):
    """One of the two works on all ledges of an elevation, and the row of the schedule that tells both."""

    row: str
    title: str
    offers: tuple[Offer, ...]


def list_added_ledges(elevation: Elevation) -> list[WaterDetail]:
    """The ledges of an elevation that no metal caps."""
    details = root_of(elevation).details
    on = details.find_referring("elevation", elevation.mark) if details.is_given() else ()
    return [detail for detail in on if detail.get("kind") == "ledge" and not detail.get("cap")]


def list_ledge_work(elevation: Elevation) -> list[LedgeWork]:
    """Bonding and rasping of the ledges of an elevation. Raises Absent without an output of a crew."""
    ledges = list_added_ledges(elevation)
    row = f"{'Ledges' if len(ledges) > 1 else 'Ledge'} {', '.join(ledge.mark for ledge in ledges)}"
    return [LedgeWork(row, title, _offer(elevation, step, ledges)) for step, title in _WORK.items()]


def _offer(elevation: Elevation, step: str, ledges: list[WaterDetail]) -> tuple[Offer, ...]:
    rates = require_rates(root_of(elevation), step)
    areas = [find_face_area(ledge) for ledge in ledges]
    each = [offer_work(rates, Quantity(area, "area", "ft2")) for area in areas]
    return tuple(
        Offer(crew, sum((max(LEAST, one[number].length) for one in each), timedelta()))
        for number, crew in enumerate(rates)
    )


def find_face_area(ledge: WaterDetail) -> Fraction:
    """The face of a ledge; nothing where it is not told, as the least time is taken then."""
    width, height = ledge.get("width"), ledge.get("height")
    return Fraction(0) if width is None or height is None else Fraction(width.amount) * Fraction(height.amount)
