"""The hours of each month in which the finish of an elevation can be viewed: by daylight, with no sun on the face."""

from datetime import timedelta
from fractions import Fraction

from specgen.computing.calendars import to_stretch
from specgen.computing.shading import is_covered
from specgen.computing.time.usable_hours import list_viewing_year
from specgen.model.absence import Absent
from specgen.model.hour_calendar import MonthHours
from specgen.model.schedule import UsableMonth
from specgen.model.typed_views import Elevation, root_of
from specgen.scheduling.spray_hours import list_stretches

# The steps at which a finish is viewed, and whether the cloth or tent of its scaffold still stands before it.
VIEWED = {"acceptance": True, "final_viewing": False}


def find_viewing_hours(elevation: Elevation, step: str) -> MonthHours:
    """The hours by month in which a step that is a viewing can be held; empty where the sun on the face is not known.

    A month without any has the whole shift: the face is then viewed under cloth, or before or behind the shift.
    """
    year = list_viewing_months(elevation, step)
    if not year:
        return ()
    schedule = root_of(elevation).schedule
    begun = timedelta(hours=schedule.shift_start.hour, minutes=schedule.shift_start.minute)
    shift = (begun, begun + to_stretch(Fraction(schedule.shift_hours)))
    return tuple(list_stretches(month, schedule.shift_start) or (shift,) for month in year)


def list_viewing_months(elevation: Elevation, step: str) -> tuple[UsableMonth, ...]:
    """The same hours as times of day in each month of the year; none where the sun on the face is not known."""
    return elevation.project.remember(("viewing hours", step, elevation.mark), lambda: _list_months(elevation, step))


def _list_months(elevation: Elevation, step: str) -> tuple[UsableMonth, ...]:
    try:
        return list_viewing_year(elevation, covered=VIEWED[step] and is_covered(elevation))
    except Absent:
        return ()
