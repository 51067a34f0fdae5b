"""The hours of each month in which primer and gloss can be sprayed on an elevation."""

from datetime import time, timedelta
from typing import NamedTuple

from specgen.computing.coats.day_area import SET_UP
from specgen.computing.time.usable_hours import list_usable_months, list_year
from specgen.model.absence import Absent
from specgen.model.calendar import DAY
from specgen.model.field import Path
from specgen.model.hour_calendar import MonthHours, Stretch, sum_stretches
from specgen.model.problem import refuse
from specgen.model.schedule import UsableMonth
from specgen.model.typed_views import Elevation, root_of

SPRAYED = ("primer", "gloss")
_AT_EACH_END = timedelta(hours=SET_UP / 2)


class SprayHours(NamedTuple):
    """The usable hours by month, the same with setup before them and cleanup behind, and these of the worst month.

    `missing` are the fields for want of which the sun on the face is not known and the whole shift is taken.
    """

    usable: MonthHours = ()
    set_up: MonthHours = ()
    shortest: timedelta = timedelta()  # of the season
    missing: tuple[Path, ...] = ()


def find_spray_hours(elevation: Elevation) -> SprayHours:
    """The hours in which an elevation can be sprayed; Refused where it has none in any month."""
    return elevation.project.remember(("spray hours", elevation.mark), lambda: _find_spray_hours(elevation))


def _find_spray_hours(elevation: Elevation) -> SprayHours:
    try:
        year, season = list_year(elevation), list_usable_months(elevation)
        start = root_of(elevation).schedule.shift_start
    except Absent as absent:
        return SprayHours(missing=absent.paths)
    usable = tuple(list_stretches(month, start) for month in year)
    if not any(usable):
        told = f"elevation {elevation.mark} has no usable spray hours in any month"
        raise refuse(told, "plan shade cloth or a tent, or move the shift")
    set_up = tuple(map(_add_set_up, usable))
    return SprayHours(usable, set_up, min(sum_stretches(set_up[month.month.month - 1]) for month in season))


def list_stretches(month: UsableMonth, shift_start: time) -> tuple[Stretch, ...]:
    """The usable hours of a shift after the midnight before it."""
    opening, found = _count(shift_start), []
    for start, end in (map(_count, span) for span in month.spans if span.start != span.end):
        begun = start if start >= opening else start + DAY
        found.append((begun, end + DAY * (end <= begun)))
    return tuple(found)


def _count(at: time) -> timedelta:
    return timedelta(hours=at.hour, minutes=at.minute)


def _add_set_up(stretches: tuple[Stretch, ...]) -> tuple[Stretch, ...]:
    """The stretches from setup to cleanup, which need no shade."""
    if not stretches:
        return ()
    starts, ends = (list(side) for side in zip(*stretches, strict=True))
    starts[0], ends[-1] = starts[0] - _AT_EACH_END, ends[-1] + _AT_EACH_END
    return tuple(zip(starts, ends, strict=True))
