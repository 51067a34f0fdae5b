"""How a coat divides a step: passes of smoothing and primer, day areas of the gloss with both its coats."""

from collections.abc import Iterator
from datetime import timedelta
from fractions import Fraction
from math import ceil
from typing import NamedTuple

from specgen.computing.calendars import to_stretch
from specgen.computing.coats.day_area import BETWEEN, SET_UP
from specgen.model.absence import Absent
from specgen.model.hour_calendar import sum_stretches
from specgen.model.typed_views import Description, Elevation, root_of
from specgen.quantities.quantity import Quantity
from specgen.resolving.drying import count_coats_within
from specgen.resolving.provider import Ask
from specgen.scheduling.crews import hours_of, offer_work
from specgen.scheduling.spray_hours import find_spray_hours
from specgen.scheduling.tasks import Offer

# A sum of day areas may miss the area by the rounding of its figures alone.
_ROUNDING = 1e-6
_SET_UP = to_stretch(Fraction(SET_UP))


class Pass(NamedTuple):
    """One stretch of a crew's work on an elevation, and the hours that it dries before the next of the same step."""

    title: str
    offers: tuple[Offer, ...]
    in_one_shift: bool = False
    then_dry: timedelta = timedelta()


def list_coats(project: Description, step: str, rates: dict[str, Quantity], area: Quantity) -> list[Pass]:
    """The passes of a step that is not sprayed: one, or one for each coat. Raises Absent."""
    offers = offer_work(rates, area)
    if step == "smoothing_1":  # all coats but the last
        count, hours = max(project.smoothing.coats - 1, 0), _smoothing_between(project)
    elif step == "smoothing_2":
        count, hours = min(project.smoothing.coats, 1), Fraction(0)
    else:
        count, hours = 1, Fraction(0)
    return [Pass(_name_coat(number, count), offers, then_dry=to_stretch(hours)) for number in range(1, count + 1)]


def list_barrier(elevation: Elevation, rates: dict[str, Quantity], area: Quantity) -> list[Pass]:
    """The coats of the water-resistive barrier, each dry before the next; one pass of a sheet. Raises Absent."""
    wrb = elevation.wall.wrb
    count = count_coats_within(elevation.project, "wrb", elevation.wall.mark)
    dry = to_stretch(Fraction(wrb.dry_hours)) if count > 1 else timedelta()
    offers = offer_work(rates, area)
    return [Pass(_name_coat(number, count), offers, then_dry=dry) for number in range(1, count + 1)]


def _smoothing_between(project: Description) -> Fraction:
    return Fraction(project.smoothing.between_hours) if project.smoothing.coats > 2 else Fraction(0)


def list_primer(elevation: Elevation, rates: dict[str, Quantity], area: Quantity) -> list[Pass]:
    """The passes of the primer: coat after coat, each with its setup and cleanup. Raises Absent."""
    primer = root_of(elevation).primer
    count = primer.coats
    dry = to_stretch(Fraction(primer.dry_hours)) if count > 1 else timedelta()
    return list(_list_sprayed(elevation, rates, area, count, dry))


def list_gloss(elevation: Elevation, rates: dict[str, Quantity], area: Quantity, ask: Ask) -> list[Pass]:
    """The passes of the gloss: day areas with both coats on one day, else coat after coat. Raises Absent."""
    gloss = root_of(elevation).gloss
    coats = gloss.coats
    if coats == 2:  # a day area is that of two coats
        areas = _list_day_areas(elevation, rates, area, ask)
        if areas:
            return areas
    dry = to_stretch(Fraction(gloss.touch_dry_hours)) if coats > 1 else timedelta()
    return list(_list_sprayed(elevation, rates, area, coats, dry))


def _list_sprayed(
    elevation: Elevation, rates: dict[str, Quantity], area: Quantity, coats: int, dry: timedelta
) -> Iterator[Pass]:
    """Coat after coat with setup and cleanup: each in one shift where every one of the season holds it, else on days
    that each have their own.
    """
    spraying = offer_work(rates, area)
    longest = max((length for _, length in spraying), default=timedelta())
    in_one_shift = longest + _SET_UP <= _find_day(elevation)
    left = _find_first_day(elevation) - _SET_UP
    days = 1 if in_one_shift or left <= timedelta() else ceil(longest / left - _ROUNDING)
    offers = tuple(Offer(crew, length + days * _SET_UP) for crew, length in spraying)
    for coat in range(1, coats + 1):
        yield Pass(_name_coat(coat, coats), offers, in_one_shift, dry)


def _name_coat(number: int, count: int) -> str:
    return f"coat {number} of {count}" if count > 1 else ""


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


def _find_first_day(elevation: Elevation) -> timedelta:
    """The same of the month in which spraying is planned to begin, where that is known."""
    spray, schedule = find_spray_hours(elevation), root_of(elevation).schedule
    planned = max(filter(None, map(schedule.get, ("work_start", "spray_start"))), default=None)
    hours = sum_stretches(spray.set_up[planned.month - 1]) if spray.usable and planned else timedelta()
    return hours or _find_day(elevation)


def _hours_of_day(one_pass: Fraction, touch_dry: Fraction) -> Fraction:
    """The hours of a day area: the second coat begins where the first began, once that is dry to touch."""
    return Fraction(SET_UP + BETWEEN) + max(one_pass, touch_dry) + one_pass
