"""When the sun stands over the horizon and before a wall, by latitude and day of the year.

Hours are solar time, so that no time zone and no longitude is needed.
"""

from math import acos, atan2, cos, hypot, sin

from specgen.computing.sunlight import DEGREE, find_declination
from specgen.standards import find_source

DECLINATION = find_source("declination").quote("declination 23.45° sin(360° (284 + day) / 365)")
# Height of the sun's middle as its upper edge rises or sets: half its width, and the bending of its light by the air.
EDGE = -0.833  # degrees
Hours = tuple[tuple[float, float], ...]  # from and to, within a day or running on into the next


def find_daylight(latitude: float, day: float) -> Hours:
    """Sunrise to sunset in hours of solar time; none where the sun does not rise, the whole day where it never sets."""
    north, tilt = latitude * DEGREE, find_declination(day)
    share = (sin(EDGE * DEGREE) - sin(north) * sin(tilt)) / max(cos(north) * cos(tilt), 1e-12)
    if share >= 1:
        return ()
    half = acos(max(share, -1)) / DEGREE / 15
    return ((12 - half, 12 + half),)


def find_sun_on_wall(latitude: float, day: float, facing: float) -> Hours:
    """The hours of solar time in which the sun stands before an upright wall; its facing in degrees from north."""
    north, tilt, turned = latitude * DEGREE, find_declination(day), facing * DEGREE
    # The cosine of incidence is a + r cos(w - p) with w, the angle of the hour.
    a, b, c = sin(tilt) * cos(north) * cos(turned), -cos(tilt) * sin(north) * cos(turned), -cos(tilt) * sin(turned)
    r, p = hypot(b, c), atan2(c, b)
    share = -a / max(r, 1e-12)
    if share >= 1:
        return ()
    half, middle = acos(max(share, -1)) / DEGREE / 15, 12 + p / DEGREE / 15
    before = tuple((middle - half + 24 * n, middle + half + 24 * n) for n in (-1, 0, 1))
    return meet(before, find_daylight(latitude, day))


def meet(some: Hours, others: Hours) -> Hours:
    """The hours that lie in both."""
    found = ((max(a, c), min(b, d)) for a, b in some for c, d in others)
    return tuple(sorted((start, end) for start, end in found if start < end))


def leave_out(some: Hours, others: Hours) -> Hours:
    """The hours of the first that do not lie in the second."""
    for start, end in others:
        parts = [part for a, b in some for part in ((a, min(b, start)), (max(a, end), b))]
        some = tuple((a, b) for a, b in parts if a < b)
    return some


def count_hours(some: Hours) -> float:
    """How many hours they are together."""
    return sum(end - start for start, end in some)
