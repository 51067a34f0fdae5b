"""The hours of each month in which the joints of an elevation can be sealed: out of direct sun, in air that is fit.

Out of direct sun a joint is taken to be as warm as the air of a mean day.
"""

from datetime import timedelta

from specgen.computing.air_of_day import list_air_hours
from specgen.computing.shading import is_covered
from specgen.computing.shift_hours import Face, repeat
from specgen.computing.sunlight import Hours, leave_out, meet
from specgen.computing.time.usable_hours import list_first_days, read_face
from specgen.model.absence import Absent
from specgen.model.dates import MONTHS
from specgen.model.hour_calendar import MonthHours, Stretch
from specgen.model.typed_views import Elevation, Month, root_of

Temperatures = tuple[float, float]  # the least and the most, of one scale


def find_sealing_hours(elevation: Elevation) -> MonthHours:
    """The hours of the shift by month; none where temperatures of joints, climate, or sun are not told.

    A month without any has the whole shift: the joints are then shaded, cooled, or warmed.
    """
    return elevation.project.remember(("sealing hours", elevation.mark), lambda: _find_hours(elevation))


def _find_hours(elevation: Elevation) -> MonthHours:
    allowed = find_sealing_temperatures(elevation)
    months = root_of(elevation).climate.months
    if allowed is None or not months.is_given():
        return ()
    by_name = {month.get("month"): month for month in months}
    covered = is_covered(elevation)
    try:
        faces = [read_face(elevation, first, covered=covered)[1] for first in list_first_days()]
    except Absent:
        return ()
    return tuple(_list_stretches(face, by_name.get(name), allowed) for name, face in zip(MONTHS, faces, strict=True))


def find_sealing_temperatures(elevation: Elevation) -> Temperatures | None:
    """What all joints of an elevation can be sealed at; None where no joint tells both."""
    project = root_of(elevation)
    joints = list(project.joints.find_referring("elevation", elevation.mark)) if project.joints.is_given() else []
    lows, highs = ([one for joint in joints if (one := joint.get(name))] for name in ("install_low", "install_high"))
    return (max(float(one.amount) for one in lows), min(float(one.amount) for one in highs)) if lows and highs else None


def _list_stretches(face: Face, month: Month | None, allowed: Temperatures) -> tuple[Stretch, ...]:
    shift: Hours = ((face.start, face.start + face.hours),)
    daily = [one for name in ("mean_min", "mean_max") if month is not None and (one := month.get(name)) is not None]
    low_and_high = [float(one.amount) for one in daily]
    fit = _list_fit(face, shift, (low_and_high[0], low_and_high[1]), allowed) if len(daily) > 1 else shift
    hours = leave_out(fit, repeat(face.find_sun()))
    return tuple((_tell(start), _tell(end)) for start, end in hours or shift)


def _list_fit(face: Face, shift: Hours, daily: Temperatures, allowed: Temperatures) -> Hours:
    """The hours of a shift in which the air is fit."""
    if allowed[0] <= daily[0] and daily[1] <= allowed[1]:
        return shift
    fit = tuple((start - face.ahead, end - face.ahead) for start, end in list_air_hours(daily, allowed))
    return meet(shift, repeat(fit))


def _tell(hour: float) -> timedelta:
    return timedelta(minutes=round(hour * 60))
