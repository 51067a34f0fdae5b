"""How a coat divides a step: passes of smoothing and primer, day areas of the gloss with both its coats."""

from datetime import timedelta
from fractions import Fraction
from math import ceil
from typing import NamedTuple

from specgen.computing.calendars import to_stretch
from specgen.computing.coats.day_area import BETWEEN, SET_UP
from specgen.model.absence import Absent
from specgen.model.typed_views import Description, Elevation, root_of
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask
from specgen.scheduling.crews import hours_of, offer_area
from specgen.scheduling.spray_hours import find_spray_hours
from specgen.scheduling.tasks import Offer

# A sum of day areas may miss the area by the rounding of its figures alone.
_ROUNDING = 1e-6


class Pass(NamedTuple):
    """One stretch of a crew's work on an elevation, and the hours that it dries before the next of the same step."""

    title: str
    offers: tuple[Offer, ...]
    in_one_shift: bool = False
    then_dry: timedelta = timedelta()


def list_coats(project: Description, step: str, rates: dict[str, Quantity], area: Quantity) -> list[Pass]:
    """The passes of a step that is no gloss: one, or one for each coat. Raises Absent."""
    offers = offer_area(rates, area)
    if step == "smoothing_1":  # all coats but the last
        count, hours = max(project.smoothing.coats - 1, 0), _smoothing_between(project)
    elif step == "smoothing_2":
        count, hours = min(project.smoothing.coats, 1), Fraction(0)
    elif step == "primer":
        count = project.primer.coats
        hours = Fraction(project.primer.dry_hours) if count > 1 else Fraction(0)
    else:
        count, hours = 1, Fraction(0)
    titles = [f"coat {number} of {count}" for number in range(1, count + 1)] if count > 1 else [""] * count
    return [Pass(title, offers, then_dry=to_stretch(hours)) for title in titles]


def _smoothing_between(project: Description) -> Fraction:
    return Fraction(project.smoothing.between_hours) if project.smoothing.coats > 2 else Fraction(0)


def list_gloss(elevation: Elevation, rates: dict[str, Quantity], area: Quantity, ask: Ask) -> list[Pass]:
    """The passes of the gloss: day areas with both coats on one day, else coat after coat. Raises Absent."""
    project = root_of(elevation)
    coats = project.gloss.coats
    if coats == 2:  # a day area is that of two coats
        areas = _list_day_areas(elevation, rates, area, ask)
        if areas:
            return areas
    dry = to_stretch(Fraction(project.gloss.touch_dry_hours)) if coats > 1 else timedelta()
    titles = [f"coat {number} of {coats}" for number in range(1, coats + 1)] if coats > 1 else [""] * coats
    return [Pass(title, offer_area(rates, area), then_dry=dry) for title in titles]


def _list_day_areas(elevation: Elevation, rates: dict[str, Quantity], area: Quantity, ask: Ask) -> list[Pass]:
    """Equal day areas, each set up, sprayed twice and cleaned up in one shift; none where no shift is as long."""
    project = root_of(elevation)
    try:
        most = ask("day-area", elevation.path).quantity.amount
    except Absent as absent:
        if absent.path[0] == "elevations":  # hours of own shade alone are not known: the shift bounds the day
            return []
        raise
    if not most:
        return []
    count = max(ceil(float(area.amount / most) - _ROUNDING), 1)
    part = Quantity(area.amount / count, "area", area.unit)
    touch_dry, day = Fraction(project.gloss.touch_dry_hours), _find_day(elevation)
    offers = tuple(
        Offer(crew, min(to_stretch(_hours_of_day(hours_of(part, rate), touch_dry)), day))
        for crew, rate in rates.items()
    )
    return [
        Pass(f"day area {number} of {count}, two coats" if count > 1 else "two coats", offers, in_one_shift=True)
        for number in range(1, count + 1)
    ]


def _find_day(elevation: Elevation) -> timedelta:
    """What a day holds from setup to cleanup: that of the worst month of the season, else the whole shift."""
    spray = find_spray_hours(elevation)
    return spray.shortest if spray.usable else to_stretch(Fraction(root_of(elevation).schedule.shift_hours))


def _hours_of_day(one_pass: Fraction, touch_dry: Fraction) -> Fraction:
    """The hours of a day area: the second coat begins where the first began, once that is dry to touch."""
    return Fraction(SET_UP + BETWEEN) + max(one_pass, touch_dry) + one_pass
