"""The sun hour by hour against a solar library, and the hourly functions against the workings that print them."""

from itertools import product
from math import degrees, radians

import numpy as np
import pytest
from pvlib import solarposition

from specgen.computing.heat_balance import balance_face, find_h_c
from specgen.computing.sunlight import (
    SKIES,
    clear_beam,
    find_declination,
    find_direction,
    find_facing,
    find_height_and_azimuth,
    find_sky,
    sun_on_wall,
)
from tests.computing.asked import line, sum_of

GRID = list(product((-66, -35, 0, 25, 40, 66, 80), (1, 60, 172, 266, 355), (0.5, 5.5, 8, 11.75, 16.25, 23)))


@pytest.mark.parametrize(("latitude", "day", "hour"), GRID)
def test_the_sun_stands_where_a_solar_library_has_it(latitude: float, day: int, hour: float) -> None:
    tilt = solarposition.declination_cooper69(day)
    north, turn = np.radians(latitude), np.radians(15 * (hour - 12))
    zenith = solarposition.solar_zenith_analytical(north, turn, tilt)
    height, azimuth = find_height_and_azimuth(find_direction(radians(latitude), find_declination(day), hour))
    assert degrees(height) == pytest.approx(90 - np.degrees(zenith), abs=1e-6)
    if 0.01 < zenith < 3.13:
        wanted = np.degrees(solarposition.solar_azimuth_analytical(north, turn, tilt, zenith)) % 360
        assert (degrees(azimuth) - wanted + 180) % 360 - 180 == pytest.approx(0, abs=1e-4)


def test_the_clear_sky_of_a_day_lies_between_those_of_the_21sts() -> None:
    # ASHRAE Handbook, Fundamentals, 2005, chapter 31: A 1093 and 1107 W/m2 in July and August.
    assert find_sky(202)[1:] == SKIES["jul"][1:] == (1093, 0.186, 0.138)
    assert 1093 < find_sky(217).a < 1107
    # January 1 lies between 21 December, 1204, and 21 January, 1202; day 365 too.
    assert 1202 < find_sky(1).a < find_sky(365).a < 1204


def test_an_hour_of_clear_sky_is_that_of_the_working() -> None:
    made = sum_of("wall-sun", latitude="40 deg", facing="W", months="jul")
    hour = next(row.value for row in made.inputs if row.symbol == "t")
    sun = find_direction(radians(40), find_declination(202), float(hour))
    sky = find_sky(202)
    beam = clear_beam(sky, sun.up, 1.0)
    assert beam == pytest.approx(line(made, "E_n"), rel=1e-9)
    total = sun_on_wall(beam, sky.c * beam, sun.up, sun.on_wall(*find_facing(270)), 0.2)
    assert total == pytest.approx(made.result, rel=1e-9)


def test_an_hour_of_the_balance_is_that_of_the_working() -> None:
    made = sum_of("surface-temperature", solar_reflectance="0.4", emittance="0.3", air="95 F", irradiance="800 W/m2")
    face = balance_face(0.6 * 800, 0.3, (95 + 459.67) / 1.8)
    assert face == pytest.approx(line(made, "K_s"), abs=1e-9)


def test_the_wind_passes_heat_by_the_classes_of_the_standard() -> None:
    # ASTM E1980: 5, 12 and 30 W/(m2 K) at 0 to 2, 2 to 6 and 6 to 10 m/s.
    assert [find_h_c(wind) for wind in (0, 2, 2.1, 6, 6.1, 12)] == [5, 5, 12, 12, 30, 30]
