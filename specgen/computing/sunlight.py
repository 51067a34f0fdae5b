"""Sun on a wall: its place in the sky, when it stands before a face, and what of a clear sky falls on one.

Angles are radians unless said otherwise, hours are solar time, so that no time zone and no longitude is needed.
Declination after Cooper, 1969; clear sky and the share of the sky that a wall sees after the ASHRAE Handbook,
Fundamentals, 2005 and 2013: `computing/heat/_clear_sky.py` cites them in full.
"""

from math import acos, asin, atan2, cos, exp, hypot, pi, sin
from typing import NamedTuple

from specgen.model.dates import MONTHS
from specgen.standards import find_source

DEGREE = pi / 180
DECLINATION = find_source("declination").quote("declination 23.45° sin(360° (284 + day) / 365)")
# Height of the sun's middle as its upper edge rises or sets: half its width, and the bending of its light by the air.
EDGE = -0.833  # degrees
Hours = tuple[tuple[float, float], ...]  # from and to, within a day or running on into the next


class Sky(NamedTuple):
    """The clear sky of a day: the day of the year, A in W/m2, B and C."""

    day: int
    a: float
    b: float
    c: float


# On the 21st of each month.
_CLEAR = (
    Sky(21, 1202, 0.141, 0.103),
    Sky(52, 1187, 0.142, 0.104),
    Sky(80, 1164, 0.149, 0.109),
    Sky(111, 1130, 0.164, 0.120),
    Sky(141, 1106, 0.177, 0.130),
    Sky(172, 1092, 0.185, 0.137),
    Sky(202, 1093, 0.186, 0.138),
    Sky(233, 1107, 0.182, 0.134),
    Sky(264, 1136, 0.165, 0.121),
    Sky(294, 1166, 0.152, 0.111),
    Sky(325, 1190, 0.144, 0.106),
    Sky(355, 1204, 0.141, 0.103),
)
SKIES = dict(zip(MONTHS, _CLEAR, strict=True))
_YEAR = 365


class Sun(NamedTuple):
    """The direction of the sun as parts of a unit length: up, toward north, toward east."""

    up: float
    north: float
    east: float

    def on_wall(self, north: float, east: float) -> float:
        """The cosine of its angle to a wall that faces toward these parts of north and east."""
        return self.north * north + self.east * east


def find_facing(degrees: float) -> tuple[float, float]:
    """The parts of north and east of a facing in degrees clockwise from north."""
    return cos(degrees * DEGREE), sin(degrees * DEGREE)


def find_declination(day: float) -> float:
    """The solar declination on a day of the year, in radians."""
    return 23.45 * sin((284 + day) * 360 / 365 * DEGREE) * DEGREE


def find_direction(latitude: float, declination: float, hour: float) -> Sun:
    """The direction of the sun from a latitude, both angles in radians, at an hour of solar time."""
    turn = 15 * (hour - 12) * DEGREE
    up = sin(latitude) * sin(declination) + cos(latitude) * cos(declination) * cos(turn)
    north = sin(declination) * cos(latitude) - cos(declination) * sin(latitude) * cos(turn)
    return Sun(up, north, -cos(declination) * sin(turn))


def find_height_and_azimuth(sun: Sun) -> tuple[float, float]:
    """Height of the sun over the horizon, and its azimuth clockwise from north, both in radians."""
    return asin(max(-1.0, min(1.0, sun.up))), atan2(sun.east, sun.north)


def find_sky(day: int) -> Sky:
    """The clear sky of a day of the year, between those of the 21sts beside it."""
    known = list(SKIES.values())
    before = max((sky for sky in known if sky.day <= day), default=known[-1]._replace(day=known[-1].day - _YEAR))
    after = min((sky for sky in known if sky.day > day), default=known[0]._replace(day=known[0].day + _YEAR))
    part = (day - before.day) / (after.day - before.day)
    a, b, c = (low + (high - low) * part for low, high in zip(before[1:], after[1:], strict=True))
    return Sky(day, a, b, c)


def clear_beam(sky: Sky, up: float, air: float) -> float:
    """Direct normal irradiance of a clear sky, in W/m2; `air` is its pressure over that at sea level."""
    return sky.a * exp(-sky.b * air / up) if up > 0 else 0.0


def sun_on_wall(beam: float, diffuse: float, up: float, cosine: float, ground: float) -> float:
    """Beam, sky and ground on a wall, in W/m2, from direct normal and diffuse horizontal irradiance."""
    seen = max(0.45, 0.55 + 0.437 * cosine + 0.313 * cosine * cosine)
    return beam * max(cosine, 0.0) + diffuse * seen + (diffuse + beam * max(up, 0.0)) * ground / 2


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
