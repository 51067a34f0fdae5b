"""Sun on a vertical wall under a clear sky, by latitude, month and facing: figures, the search for the peak, the lines.

The days are the 21st of each month and the hours are solar time, so that no time zone and no longitude is needed.
"""

from datetime import time
from fractions import Fraction
from functools import lru_cache
from math import cos, sin
from typing import NamedTuple

from specgen.computing.sunlight import (
    DECLINATION,
    DEGREE,
    SKIES,
    clear_beam,
    find_declination,
    find_direction,
    find_height_and_azimuth,
    sun_on_wall,
)
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.source import Kind, Source
from specgen.model.value_text import value_text, words
from specgen.model.working import UNIT_CHANGE, InputRow
from specgen.standards import find_source

CLEAR_SKY = find_source("ashrae_clear_sky").quote(
    "beam A exp(-B / sin h), B here times the pressure ratio for altitude, sky C times the beam, with A, B and C for "
    "the 21st of each month"
)
VERTICAL = find_source("ashrae_vertical_sky").quote(
    "share of the sky that a wall sees: 0.55 + 0.437 cos i + 0.313 cos² i, 0.45 or more"
)
THIN_AIR = Source(Kind.MEMORY, "solar practice: B is reduced by the pressure of the air over that at sea level")
GROUND = Fraction(1, 5)
GRASS = Source(Kind.MEMORY, "usual ground of grass and asphalt; light paving, water and snow throw back more")
SOURCES = (CLEAR_SKY, VERTICAL, DECLINATION, THIN_AIR)


BY_TRIAL, OF_THE_DAY = "by trial", "of that day"
STEPS = 6  # hours are searched by sixths

NOON = 12 * 60  # minutes


class Peak(NamedTuple):
    """When a wall gets most sun: month, solar hour, and the sun on it in W/m2."""

    month: str
    hour: float
    sun: float


def find_sun(latitude: float, month: str, hour: float) -> tuple[float, float]:
    """Height of the sun over the horizon, and its azimuth clockwise from north, both in radians."""
    declination = find_declination(SKIES[month].day)
    return find_height_and_azimuth(find_direction(latitude * DEGREE, declination, hour))


def total_sun(height: float, cosine: float, month: str, air: float, ground: float) -> float:
    """Beam, sky and ground on a wall, in W/m2; `air` is its pressure over that at sea level."""
    if height <= 0:
        return 0.0
    sky, up = SKIES[month], sin(height)
    beam = clear_beam(sky, up, air)
    return sun_on_wall(beam, sky.c * beam, up, cosine, ground)


@lru_cache(maxsize=256)
def find_peak(latitude: float, air: float, ground: float, months: tuple[str, ...], facing: float | None) -> Peak:
    """The peak on a wall of a facing in degrees, or on the wall that gets most where it is None.

    That wall looks to where the sun stands. Of two hours alike the later one is taken, when the air is hotter.
    """
    best = Peak(months[0], 12, -1)
    for month in months:
        for step in range(24 * STEPS - 1, 0, -1):
            height, azimuth = find_sun(latitude, month, step / STEPS)
            cosine = cos(height) * (1 if facing is None else cos(azimuth - facing * DEGREE))
            sun = total_sun(height, cosine, month, air, ground)
            if sun > best.sun + 1e-6:
                best = Peak(month, step / STEPS, sun)
    return best


def sky_rows(peak: Peak) -> tuple[InputRow, ...]:
    """The lines of the hour and the month of a peak."""
    day, a, b, c = SKIES[peak.month]
    return (
        InputRow("N", f"day of the year, {words(peak.month)} 21", day, "", BY_TRIAL, CLEAR_SKY),
        InputRow("t", "solar time of the peak", peak.hour, "h", f"{BY_TRIAL}, in steps of 10 minutes"),
        InputRow("k", "radians per degree", DEGREE, "", UNIT_CHANGE),
        InputRow("A", "apparent solar irradiation", a, "W/m2", OF_THE_DAY, CLEAR_SKY),
        InputRow("B", "atmospheric extinction", b, "", OF_THE_DAY, CLEAR_SKY),
        InputRow("C", "diffuse factor", c, "", OF_THE_DAY, CLEAR_SKY),
    )


def add_sun(working: WorkingBuilder, facing: str) -> None:
    """Adds the steps to E, the sun on a wall; `facing` is the symbol of its facing, Z for one that faces the sun."""
    working.step("d", "solar declination", "23.45 * sin(k * 360 * (284 + N) / 365)", "deg")
    working.step("w", "hour angle", "15 * (t - 12)", "deg")
    height = "sin(k * L) * sin(k * d) + cos(k * L) * cos(k * d) * cos(k * w)"
    working.step("h", "solar altitude angle", f"asin({height}) / k", "deg")
    north = "sin(k * d) * cos(k * L) - cos(k * d) * sin(k * L) * cos(k * w)"
    round_the_compass = " + 360" if working.known["w"] >= 0 else ""
    azimuth = f"atan2(-cos(k * d) * sin(k * w), {north}) / k{round_the_compass}"
    working.step("Z", "solar azimuth, clockwise from north", azimuth, "deg")
    # A wall that faces the sun differs from it by no angle around.
    around = "" if facing == "Z" else f" * cos(k * (Z - {facing}))"
    working.step(
        "c_i", "cosine of incidence angle" + ("" if around else ", wall facing the sun"), f"cos(k * h){around}", ""
    )
    working.step("i", "incidence angle", "atan2(sqrt(1 - c_i^2), c_i) / k", "deg")
    working.step("E_n", "direct normal irradiance", "A * exp(-B * P_a / (P_0 * sin(k * h)))", "W/m2")
    working.step("E_b", "direct irradiance on wall", "E_n * max(c_i, 0)", "W/m2")
    working.step("Y", "wall sky factor", "max(0.45, 0.55 + 0.437 * c_i + 0.313 * c_i^2)", "")
    working.step("E_d", "sky diffuse on wall", "C * E_n * Y", "W/m2")
    working.step("E_r", "ground reflected on wall", "E_n * (C + sin(k * h)) * g / 2", "W/m2")
    working.step("E", "clear-sky irradiance on wall", "E_b + E_d + E_r", "W/m2")


def tell_peak(peak: Peak) -> str:
    """When the peak comes, in words."""
    minutes = round(peak.hour * 60)
    hour = value_text(time(minutes // 60, minutes % 60))
    return f"{words(peak.month)} 21, {'solar noon' if minutes == NOON else f'{hour} solar time'}"
