"""Sun on a wall, hour by hour: its place in the sky, the clear sky of each day, and what of both falls on a face.

Angles are radians, hours are solar time. Declination after Cooper, 1969; clear sky and the share of the sky that a wall
sees after the ASHRAE Handbook, Fundamentals, 2005 and 2013: `computing/heat/_clear_sky.py` cites them in full.
"""

from math import asin, atan2, cos, exp, pi, sin
from typing import NamedTuple

DEGREE = pi / 180


class Month(NamedTuple):
    """The 21st of a month: its day of the year, and A in W/m2, B and C of the clear sky."""

    day: int
    a: float
    b: float
    c: float


MONTHS = {
    "jan": Month(21, 1202, 0.141, 0.103),
    "feb": Month(52, 1187, 0.142, 0.104),
    "mar": Month(80, 1164, 0.149, 0.109),
    "apr": Month(111, 1130, 0.164, 0.120),
    "may": Month(141, 1106, 0.177, 0.130),
    "jun": Month(172, 1092, 0.185, 0.137),
    "jul": Month(202, 1093, 0.186, 0.138),
    "aug": Month(233, 1107, 0.182, 0.134),
    "sep": Month(264, 1136, 0.165, 0.121),
    "oct": Month(294, 1166, 0.152, 0.111),
    "nov": Month(325, 1190, 0.144, 0.106),
    "dec": Month(355, 1204, 0.141, 0.103),
}
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


def find_sky(day: int) -> Month:
    """The clear sky of a day of the year, between those of the 21sts beside it."""
    known = list(MONTHS.values())
    before = max((month for month in known if month.day <= day), default=known[-1]._replace(day=known[-1].day - _YEAR))
    after = min((month for month in known if month.day > day), default=known[0]._replace(day=known[0].day + _YEAR))
    part = (day - before.day) / (after.day - before.day)
    a, b, c = (low + (high - low) * part for low, high in zip(before[1:], after[1:], strict=True))
    return Month(day, a, b, c)


def clear_beam(sky: Month, up: float, air: float) -> float:
    """Direct normal irradiance of a clear sky, in W/m2; `air` is its pressure over that at sea level."""
    return sky.a * exp(-sky.b * air / up) if up > 0 else 0.0


def sun_on_wall(beam: float, diffuse: float, up: float, cosine: float, ground: float) -> float:
    """Beam, sky and ground on a wall, in W/m2, from direct normal and diffuse horizontal irradiance."""
    seen = max(0.45, 0.55 + 0.437 * cosine + 0.313 * cosine * cosine)
    return beam * max(cosine, 0.0) + diffuse * seen + (diffuse + beam * max(up, 0.0)) * ground / 2
