"""The hours of each month in which a coat that bears no direct sun goes on: out of it, and set before it is back."""

from datetime import timedelta
from math import ceil, floor

from specgen.computing.shading import is_covered
from specgen.computing.shift_hours import Face, repeat
from specgen.computing.sunlight import Hours, count_hours, leave_out
from specgen.computing.time.usable_hours import list_first_days, read_face
from specgen.model.absence import Absent
from specgen.model.hour_calendar import MonthHours, Stretch
from specgen.model.typed_views import Elevation

SETTING = 1.0  # hours from the last of a coat until it is set to touch: common practice, no source
LEAST = 2.0  # hours; for less of a shift nobody mixes: the face is shaded instead
_QUARTERS = 4  # of an hour: nothing on a wall is planned closer


def find_shaded_hours(elevation: Elevation) -> MonthHours:
    """The hours of the shift by month; none where cloth or a tent covers the face, or its sun is not known.

    A month with too few of them has the whole shift: the face is then shaded.
    """
    months = list_shaded_months(elevation)
    if not months or all(hours == (shift,) for hours, shift in months):
        return ()
    return tuple(_tell(hours or (shift,)) for hours, shift in months)


def find_unshaded_months(elevation: Elevation) -> frozenset[int]:
    """The months, from 1, in which the shift has too few hours without sun on the face."""
    return frozenset(month for month, (hours, _) in enumerate(list_shaded_months(elevation), 1) if not hours)


def list_shaded_months(elevation: Elevation) -> tuple[tuple[Hours, tuple[float, float]], ...]:
    """For each month the hours out of direct sun, none where they are too few, and the shift."""
    return elevation.project.remember(("shaded hours", elevation.mark), lambda: _list_months(elevation))


def _list_months(elevation: Elevation) -> tuple[tuple[Hours, tuple[float, float]], ...]:
    if is_covered(elevation):
        return ()
    try:
        faces = [read_face(elevation, first, covered=False)[1] for first in list_first_days()]
    except Absent:
        return ()
    return tuple((_leave_out_sun(face), (face.start, face.start + face.hours)) for face in faces)


def _leave_out_sun(face: Face) -> Hours:
    """The shift less the sun, and less what a coat needs to set before it."""
    sunny = tuple((start - SETTING, end) for start, end in face.find_sun())
    shift = face.start, face.start + face.hours
    quarters = (_narrow(one, shift) for one in leave_out((shift,), repeat(sunny)))
    hours = tuple((start, end) for start, end in quarters if start < end)
    return hours if count_hours(hours) >= min(LEAST, face.hours) else ()


def _narrow(hours: tuple[float, float], shift: tuple[float, float]) -> tuple[float, float]:
    """Hours to whole quarters; the ends of the shift stay where they are."""
    start, end = hours
    return (
        start if start == shift[0] else ceil(start * _QUARTERS) / _QUARTERS,
        end if end == shift[1] else floor(end * _QUARTERS) / _QUARTERS,
    )


def _tell(hours: Hours) -> tuple[Stretch, ...]:
    return tuple((timedelta(hours=start), timedelta(hours=end)) for start, end in hours)
