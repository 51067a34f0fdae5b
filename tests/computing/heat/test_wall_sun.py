"""Sun on a wall by facing: published figures by hand, and a general solar library over a grid of places and hours."""

import warnings
from itertools import product
from math import asin, cos, degrees, exp, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen import computing
from specgen.computing.arguments import direct
from specgen.computing.heat._clear_sky import find_sun, total_sun
from specgen.computing.heat._sun import months_by_highs
from specgen.computing.sunlight import SKIES
from specgen.model.working import Working
from specgen.quantities.quantity import Quantity

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    from pvlib import irradiance, solarposition

# Retyped: ASHRAE Handbook, Fundamentals, 2005, chapter 31 (A in W/m2, B, C), and the days of the year of the 21sts.
PUBLISHED = {
    "jan": (21, 1202, 0.141, 0.103),
    "feb": (52, 1187, 0.142, 0.104),
    "mar": (80, 1164, 0.149, 0.109),
    "apr": (111, 1130, 0.164, 0.120),
    "may": (141, 1106, 0.177, 0.130),
    "jun": (172, 1092, 0.185, 0.137),
    "jul": (202, 1093, 0.186, 0.138),
    "aug": (233, 1107, 0.182, 0.134),
    "sep": (264, 1136, 0.165, 0.121),
    "oct": (294, 1166, 0.152, 0.111),
    "nov": (325, 1190, 0.144, 0.106),
    "dec": (355, 1204, 0.141, 0.103),
}
GRID = list(product((-35, 0, 25, 40, 60), PUBLISHED, (8, 10.5, 13, 16)))


def wall_sun(**keys: str) -> Working:
    return direct(computing.find("wall-sun"), keys)


def value(working: Working, symbol: str) -> float:
    return next(float(step.value) for step in working.steps if step.symbol == symbol)


def sun_by_library(latitude: float, month: str, hour: float) -> tuple[float, float]:
    """Height and azimuth of the sun, in degrees, by the library's geometry."""
    north, turn = radians(latitude), radians(15 * (hour - 12))
    tilt = solarposition.declination_cooper69(PUBLISHED[month][0])
    zenith = solarposition.solar_zenith_analytical(north, turn, tilt)
    return 90 - degrees(zenith), degrees(solarposition.solar_azimuth_analytical(north, turn, tilt, zenith)) % 360


def test_the_constants_are_those_of_the_handbook() -> None:
    assert {name: tuple(month) for name, month in SKIES.items()} == PUBLISHED


@pytest.mark.parametrize(("latitude", "month", "hour"), GRID)
def test_the_sun_stands_where_a_solar_library_puts_it(latitude: float, month: str, hour: float) -> None:
    height, azimuth = find_sun(latitude, month, hour)
    wanted = sun_by_library(latitude, month, hour)
    assert degrees(height) == pytest.approx(wanted[0], abs=1e-6)
    assert degrees(azimuth) % 360 == pytest.approx(wanted[1], abs=1e-3)


@pytest.mark.parametrize("month", PUBLISHED)
def test_the_declination_is_near_that_of_a_finer_series(month: str) -> None:
    # Spencer's series in the library; the simple formula is known to be off by half a degree or so, at most 1.6.
    finer = degrees(solarposition.declination_spencer71(PUBLISHED[month][0]))
    noon = degrees(find_sun(40, month, 12)[0]) - 50
    assert noon == pytest.approx(finer, abs=1.6)


@pytest.mark.parametrize(("latitude", "month", "hour"), GRID)
@pytest.mark.parametrize("facing", [0, 67.5, 90, 180, 225, 270])
def test_beam_sky_and_ground_add_up_to_those_of_the_published_formulas(
    latitude: float, month: str, hour: float, facing: float
) -> None:
    height, azimuth = sun_by_library(latitude, month, hour)
    cosine = irradiance.aoi_projection(90, facing, 90 - height, azimuth)
    wanted = 0.0
    if height > 0:
        _, a, b, c = PUBLISHED[month]
        beam = a * exp(-b / sin(radians(height)))
        sky = c * beam
        ground = irradiance.get_ground_diffuse(90, sky + beam * sin(radians(height)), albedo=0.2)
        # ASHRAE Fundamentals 2013, chapter 14, equation 28.
        wanted = beam * max(cosine, 0) + sky * max(0.45, 0.55 + 0.437 * cosine + 0.313 * cosine**2) + ground
    ours, towards = find_sun(latitude, month, hour)
    made = total_sun(ours, cos(ours) * cos(towards - radians(facing)), month, 1, 0.2)
    assert made == pytest.approx(wanted, abs=0.01)


# By hand: 1093 exp(-0.186 / sin h), 21 July.
@pytest.mark.parametrize(("height", "wanted"), [(70, 896.7), (45, 840.2), (20, 634.5)])
def test_the_beam_of_july_by_hand(height: float, wanted: float) -> None:
    # A wall turned from the sun by a cosine of 1 more than of 0 gets the beam more, and more of the sky.
    beam_and_sky = total_sun(radians(height), 1, "jul", 1, 0) - total_sun(radians(height), 0, "jul", 1, 0)
    assert beam_and_sky / (1 + 0.138 * (0.437 + 0.313)) == pytest.approx(wanted, abs=0.05)


def test_the_working_prints_what_the_search_found() -> None:
    made = wall_sun(latitude="40 deg", facing="W", months="jul")
    hour = next(row.value for row in made.inputs if row.symbol == "t")
    height, azimuth = sun_by_library(40, "jul", hour)
    assert (value(made, "h"), value(made, "Z")) == pytest.approx((height, azimuth), abs=1e-3)
    assert value(made, "c_i") == pytest.approx(irradiance.aoi_projection(90, 270, 90 - height, azimuth), abs=1e-6)
    assert value(made, "E_b") + value(made, "E_d") + value(made, "E_r") == pytest.approx(made.result)
    # No step of the search before or after it gets more.
    for step in range(1, 144):
        at, to = find_sun(40, "jul", step / 6)
        assert total_sun(at, cos(at) * cos(to - radians(270)), "jul", 1, 0.2) <= made.result + 1e-6


def peak(facing: str, **keys: str) -> float:
    return float(wall_sun(latitude="40 deg", facing=facing, **keys).result)


def test_north_gets_least_and_west_as_much_as_east_in_july() -> None:
    # A matter of geometry at 40 degrees north: the sun of July stands high at noon, low in the west at four.
    assert peak("N", months="jul") < 0.45 * peak("W", months="jul")
    assert peak("S", months="jul") < 0.8 * peak("W", months="jul")
    assert peak("E", months="jul") == pytest.approx(peak("W", months="jul"), abs=0.01)


def test_a_south_wall_gets_more_in_winter_than_in_summer() -> None:
    assert peak("S", months="dec") > peak("S", months="jun")


def test_the_southern_half_of_the_earth_mirrors_the_northern_at_the_same_declination() -> None:
    north, south = find_sun(35, "jul", 15), find_sun(-35, "jul", 15)
    assert north[0] > south[0]
    mirrored = wall_sun(latitude="-40 deg", facing="N", months="dec")
    assert value(mirrored, "d") == pytest.approx(-23.45, abs=0.01)
    assert value(mirrored, "Z") == pytest.approx(360)


@pytest.mark.parametrize("facing", ["N", "0", "360"])
def test_letters_and_degrees_name_the_same_wall(facing: str) -> None:
    assert peak(facing) == pytest.approx(peak("N"), abs=1e-6)


def test_thin_air_lets_more_sun_through() -> None:
    # From memory: B by the pressure over that at sea level. At 0.8 of it, 21 July, 45 degrees: exp(0.2 B / sin 45).
    ratio = total_sun(radians(45), 0.5, "jul", 0.8, 0.2) / total_sun(radians(45), 0.5, "jul", 1, 0.2)
    assert ratio == pytest.approx(exp(0.2 * 0.186 / sin(asin(0.5**0.5))))


def test_the_figure_of_the_project_sets_the_level_and_the_facing_the_share() -> None:
    made = wall_sun(latitude="40 deg", facing="N", sunniest="950 W/m2")
    assert made.result == pytest.approx(950 * peak("N") / direct(computing.find("peak-sun"), {"latitude": "40"}).result)


def test_a_figure_of_the_project_below_the_clear_sky_lowers_no_sun() -> None:
    # Some 875 W/m2 reach the sunniest wall there by the published formulas above.
    assert wall_sun(latitude="40 deg", facing="N", sunniest="750 W/m2").result == pytest.approx(peak("N"))


@given(st.floats(-66, 66), st.floats(0, 360))
def test_no_wall_gets_more_than_the_sunniest(latitude: float, facing: float) -> None:
    made = wall_sun(latitude=f"{latitude:.4f} deg", facing=f"{facing:.3f}")
    assert 0 < value(made, "s") <= 1 + 1e-9


HIGHS = dict(zip(PUBLISHED, (36, 40, 52, 64, 74, 83, 88, 86, 78, 65, 50, 38), strict=True))  # figures of our own


def test_the_hot_months_are_those_near_the_hottest_where_the_year_is_given() -> None:
    highs = {month: Quantity.of(high, "F") for month, high in HIGHS.items()}
    near = Quantity.of(10, "F apart")  # common practice, no source
    assert months_by_highs(highs, near) == ("jun", "jul", "aug", "sep")
    assert months_by_highs({"jan": Quantity.of(36, "F")}, near) is None
