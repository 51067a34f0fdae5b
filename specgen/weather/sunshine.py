"""The sun through the hours of a file: where it stands, and whether it reaches a wall.

The hours of a file with a station are taken by its longitude and time zone, with the equation of time after Spencer,
1971; those of any other are taken as solar time, which differs by up to an hour and more where clocks are set forward.
"""

from datetime import datetime
from math import radians
from typing import NamedTuple

from specgen.computing.sun_clock import count_ahead
from specgen.computing.sunlight import Sun, find_declination, find_direction, find_facing
from specgen.weather.hours import HourlyData, Station

# The sun shines where its direct irradiance is more than this, in W/m2: World Meteorological Organization, WMO-No. 8,
# Guide to Instruments and Methods of Observation, sunshine duration.
SUNSHINE = 120.0
_LEAST_COSINE = 1e-6  # along the wall it does not reach it


class Sunshine(NamedTuple):
    """The direction of the sun at the beginning of each hour, at its middle, and at its end."""

    begins: list[Sun]
    middles: list[Sun]
    ends: list[Sun]


def find_sunshine(data: HourlyData, latitude: float) -> Sunshine:
    """The sun of each hour of a file, seen from a latitude in degrees."""
    north = radians(latitude)
    begins: list[Sun] = []
    middles: list[Sun] = []
    ends: list[Sun] = []
    known: dict[tuple[int, int, int], tuple[Sun, Sun, Sun]] = {}
    for start in data.starts:
        key = (start.month, start.day, start.hour * 60 + start.minute)
        if key not in known:
            day = day_of_year(start)
            declination = find_declination(day)
            hour = key[2] / 60 + _find_shift(day, data.station)
            at = (find_direction(north, declination, hour + half / 2) for half in range(3))
            known[key] = (next(at), next(at), next(at))
        one, two, three = known[key]
        begins.append(one)
        middles.append(two)
        ends.append(three)
    return Sunshine(begins, middles, ends)


def day_of_year(start: datetime) -> int:
    """The day of the year from 1 to 365; the leap day counts as the one before it."""
    leap = start.year % 4 == 0 and (start.year % 100 != 0 or start.year % 400 == 0)
    day = start.timetuple().tm_yday
    return day - 1 if leap and day > 59 else day


def _find_shift(day: int, station: Station | None) -> float:
    """Hours that solar time is ahead of the clock."""
    if station is None:
        return 0.0
    return count_ahead(day, station.longitude, station.zone)


def list_sunlit(data: HourlyData, sunshine: Sunshine, facing: float) -> list[bool]:
    """Whether the sun reaches a wall in any part of each hour; `facing` is in degrees clockwise from north.

    An hour whose measured direct irradiance is none that counts as sunshine is in shade.
    """
    north, east = find_facing(facing)
    direct = data.column("direct")
    return [
        (beam is None or beam > SUNSHINE)
        and any(sun.up > 0 and sun.on_wall(north, east) > _LEAST_COSINE for sun in three)
        for beam, *three in zip(direct, *sunshine, strict=True)
    ]


def list_dark(sunshine: Sunshine) -> list[bool]:
    """Whether the sun is down at the middle of each hour."""
    return [sun.up <= 0 for sun in sunshine.middles]
