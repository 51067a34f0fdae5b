"""Usable spray hours: sunrise and the sun on a wall against a general solar library, whole days by hand."""

import warnings
from datetime import date, time
from math import degrees, radians
from pathlib import Path
from typing import Any, cast

import pandas
import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.computing.shift_hours import Face, split_shift
from specgen.computing.sun_clock import find_equation
from specgen.computing.sunlight import find_daylight, find_sun_on_wall
from specgen.computing.time.usable_hours import list_months, list_usable_months
from specgen.model.absence import Absent
from specgen.model.dates import MONTHS, months_between
from specgen.model.field import dotted_path
from specgen.model.problem import Refused
from specgen.model.schedule import Span, UsableMonth
from specgen.model.typed_views import Elevation
from tests.computing._figures import line, worked
from tests.support import merged, project_of

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    from pvlib import irradiance, solarposition

# A site of our own: a shift from 6:00 to 16:00, spraying from July to September.
PROJECT: dict[str, Any] = {
    "site": {"latitude": "41.2 deg"},
    "elevations": {"E1": {"facing": "S"}},
    "schedule": {"shift_start": "06:00", "shift_hours": 10, "spray_start": "2027-07-12", "spray_end": "2027-09-10"},
}
SUMMER = {"spray_start": "2027-06-07", "spray_end": "2027-06-25"}


def face(folder: Path, change: Any = None) -> Elevation:
    return cast(Elevation, project_of(folder, merged(PROJECT, change or {})).view(("elevations", "E1")))


def months(folder: Path, change: Any = None) -> tuple[UsableMonth, ...]:
    return list_usable_months(face(folder, change))


def june(folder: Path, change: Any = None) -> UsableMonth:
    return months(folder, merged({"schedule": SUMMER}, change or {}))[0]


def lost(month: UsableMonth) -> dict[str, float]:
    return {cause: round(hours, 2) for cause, hours in month.lost}


@pytest.mark.parametrize("latitude", [-50, -33.9, 0, 25, 41.2, 52.4, 60])
@pytest.mark.parametrize("month", range(1, 13))
def test_the_length_of_daylight_is_near_that_of_a_fine_ephemeris(latitude: float, month: int) -> None:
    # pvlib.solarposition.sun_rise_set_transit_spa (NREL's algorithm), on the 15th at longitude 0. The simple
    # declination is known to be off by half a degree or so, at most 1.6: sunrise and sunset move by up to 5 minutes
    # each, beyond 45 degrees of latitude by up to 8.
    day = pandas.DatetimeIndex([pandas.Timestamp(2027, month, 15, tz="UTC")])
    told = solarposition.sun_rise_set_transit_spa(day, latitude, 0)
    wanted = (told["sunset"].iloc[0] - told["sunrise"].iloc[0]).total_seconds() / 3600 % 24
    ((rise, fall),) = find_daylight(latitude, day.day_of_year[0])
    assert fall - rise == pytest.approx(wanted, abs=0.15 if abs(latitude) < 45 else 0.27)
    assert rise + fall == 24


def sun_by_library(latitude: float, day: int, hour: float) -> tuple[float, float]:
    """Zenith and azimuth of the sun in degrees, by the library's geometry with the same declination."""
    north, turn, tilt = radians(latitude), radians(15 * (hour - 12)), solarposition.declination_cooper69(day)
    zenith = solarposition.solar_zenith_analytical(north, turn, tilt)
    return degrees(zenith), degrees(solarposition.solar_azimuth_analytical(north, turn, tilt, zenith))


@pytest.mark.parametrize("latitude", [0, 40, 55, -35])
@pytest.mark.parametrize("day", [20, 105, 196, 288])
def test_at_sunrise_the_edge_of_the_sun_is_on_the_horizon(latitude: float, day: int) -> None:
    # 0.833 degrees: the usual definition of sunrise in almanacs; from memory. pvlib's analytical zenith, exact.
    assert sun_by_library(latitude, day, find_daylight(latitude, day)[0][0])[0] == pytest.approx(90.833, abs=1e-6)


@given(st.floats(-65, 65), st.integers(1, 365), st.floats(0, 360), st.floats(0.1, 23.9))
def test_the_sun_stands_before_a_wall_when_a_solar_library_has_it_there(
    latitude: float, day: int, facing: float, hour: float
) -> None:
    # pvlib.irradiance.aoi_projection of an upright wall; exact, save within a thousandth of grazing it, and under a sun
    # overhead, of which the library tells no azimuth.
    zenith, azimuth = sun_by_library(latitude, day, hour)
    before = irradiance.aoi_projection(90, facing, zenith, azimuth)
    if abs(before) > 1e-3 and abs(zenith - 90.833) > 1e-3 and zenith > 2:
        found = any(start <= hour <= end for start, end in find_sun_on_wall(latitude, day, facing))
        assert found == (before > 0 and zenith < 90.833)


def test_a_south_face_in_june_has_its_own_shade_in_the_early_morning(tmp_path: Path) -> None:
    # On June 15, day 166, the declination is 23.31 degrees. The sun comes round to a south wall where
    # cos w = tan 23.31 / tan 41.2 = 0.4922 (Duffie and Beckman, sunset on a tilted surface): 60.51 degrees or 4.034 h
    # before noon, 7:58. Half an hour of the shift is set-up; at its end the sun is still there.
    told = june(tmp_path)
    assert told.spans == (Span(time(6, 30), time(7, 58)),)
    assert told.hours == pytest.approx(1.466, abs=0.002)
    assert lost(told) == {"direct sun": 8.03, "setup and cleanup": 0.5}
    assert told.month == date(2027, 6, 1)


def test_a_north_face_has_the_other_hours(tmp_path: Path) -> None:
    # The same angle: shade from 7:58 to 16:02. Set-up falls into the sun; clean-up takes the last half hour.
    told = june(tmp_path, {"elevations": {"E1": {"facing": "N"}}})
    assert told.spans == (Span(time(7, 58), time(15, 30)),)
    assert lost(told) == {"direct sun": 1.97, "setup and cleanup": 0.5}


@pytest.mark.parametrize("kind", ["shade_cloth", "tent"])
def test_under_cover_the_sun_takes_nothing_and_no_facing_is_needed(kind: str, tmp_path: Path) -> None:
    shade = {"shade": {"SH1": {"elevation": "E1", "kind": kind}}}
    told = june(tmp_path, shade | {"elevations": {"E1": {"facing": "drop", "name": "Front"}}})
    assert (told.spans, told.hours) == ((Span(time(6, 30), time(15, 30)),), 9)
    assert lost(told) == {"setup and cleanup": 1}


def test_shade_that_was_observed_stands_above_the_geometry_in_its_month_alone(tmp_path: Path) -> None:
    seen = {"month": "jul", "from": "06:00", "to": "10:30"}
    july, august, _ = months(tmp_path, {"elevations": {"E1": {"shade_hours": [seen]}}})
    assert july.spans == (Span(time(6, 30), time(10, 30)),)
    assert august.spans == months(tmp_path)[1].spans


def test_the_months_are_those_of_the_season_over_the_turn_of_a_year(tmp_path: Path) -> None:
    assert [told.month for told in months(tmp_path)] == [date(2027, 7, 1), date(2027, 8, 1), date(2027, 9, 1)]
    winter = {"schedule": {"spray_start": "2027-11-30", "spray_end": "2028-02-01"}}
    assert [told.month.month for told in months(tmp_path, winter)] == [11, 12, 1, 2]
    assert months_between(date(2027, 12, 31), date(2028, 1, 1)) == (date(2027, 12, 1), date(2028, 1, 1))


def test_without_a_season_all_twelve_months_are_told(tmp_path: Path) -> None:
    assert len(months(tmp_path, {"schedule": {"spray_end": "drop"}})) == 12


def test_north_of_the_circle_the_day_has_no_end_or_no_beginning() -> None:
    assert find_daylight(70, 166) == ((0, 24),)
    assert find_daylight(70, 349) == ()
    dark = split_shift(Face(70, 349, 180, 6, 10), 1)
    assert (dark.usable, dark.dark) == ((), 10)
    # By lamp the sun is no matter where it does not rise.
    assert split_shift(Face(70, 349, 180, 6, 10, lamp=True), 1).usable == ((6.5, 15.5),)
    # At midsummer the sun is before a north wall all night long.
    bright = split_shift(Face(70, 166, 0, 20, 10), 1)
    assert (bright.usable, bright.dark) == ((), 0)


def test_a_shift_past_midnight_goes_on_in_the_next_morning(tmp_path: Path) -> None:
    night = {"schedule": SUMMER | {"shift_start": "20:00"}}
    told = june(tmp_path, night)
    # The sun rises 7.565 h before noon, 4:26; clean-up takes the last half hour before 6:00, and set-up is in the dark.
    assert told.spans == (Span(time(4, 26), time(5, 30)),)
    lamp = june(tmp_path, merged(night, {"schedule": {"night_work": "yes"}}))
    assert (lamp.spans, lamp.hours) == ((Span(time(20, 30), time(5, 30)),), 9)


def test_every_hour_of_a_shift_is_usable_or_lost_to_one_cause(tmp_path: Path) -> None:
    for facing in range(0, 360, 15):
        for month in months(tmp_path, {"elevations": {"E1": {"facing": f"{facing} deg"}}}):
            assert month.hours + sum(hours for _, hours in month.lost) == pytest.approx(10)


def test_own_shade_is_never_more_than_cover_gives(tmp_path: Path) -> None:
    south = face(tmp_path)
    for own, under in zip(list_months(south, covered=False), list_months(south, covered=True), strict=True):
        assert own.hours < under.hours == 9


# Towns of our own in zones of the IANA data: one far east in its zone, one far west, one south of the equator whose
# summer time is in January, one beyond the line where the date changes, and one that keeps no summer time.
PLACES = [
    (41.2, -72.9, "America/New_York"),
    (43.5, -110.7, "America/Denver"),
    (42.1, -8.5, "Europe/Madrid"),
    (-36.9, 149.8, "Australia/Sydney"),
    (1.9, -157.4, "Pacific/Kiritimati"),
    (33.4, -112.1, "America/Phoenix"),
]


@pytest.mark.parametrize(("latitude", "longitude", "zone"), PLACES)
@pytest.mark.parametrize("month", ["jan", "mar", "jul", "oct"])
def test_sunrise_and_sunset_are_by_the_clock_of_the_site(
    latitude: float, longitude: float, zone: str, month: str
) -> None:
    # pvlib.solarposition.sun_rise_set_transit_spa (NREL's algorithm) in the time zone: within the 5 minutes that the
    # simple declination costs, and the 1 minute of the series for the equation of time.
    day = pandas.DatetimeIndex([pandas.Timestamp(2027, MONTHS.index(month) + 1, 15, tz=zone)])
    told = solarposition.sun_rise_set_transit_spa(day, latitude, longitude)
    keys = {"latitude": str(latitude), "longitude": str(longitude), "time_zone": zone, "month": month}
    made = worked("usable-hours", keys | {"shift": "06:00-16:00"})
    for symbol, name in (("T_r", "sunrise"), ("T_s", "sunset")):
        at = told[name].iloc[0]
        assert line(made, symbol) == pytest.approx(at.hour + at.minute / 60 + at.second / 3600, abs=0.1)


@pytest.mark.parametrize("day", [1, 46, 105, 166, 196, 258, 306, 349])
def test_the_equation_of_time_is_that_of_a_solar_library(day: int) -> None:
    # pvlib.solarposition.equation_of_time_spencer71, exact.
    assert find_equation(day) == pytest.approx(solarposition.equation_of_time_spencer71(day), abs=1e-9)


CLOCK = {"site": {"latitude": "41.2 deg", "longitude": "-75.4 deg", "time_zone": "America/New_York"}}


def test_with_longitude_and_time_zone_the_hours_are_by_the_clock(tmp_path: Path) -> None:
    # Noon of the sun on June 15 at 75.4 degrees west: 12 h + 1 h of summer time + 1.6 min of longitude + 0.5 min, pvlib
    # as above, 13:02. Own shade until 4.034 h before it, 9:00.
    told = june(tmp_path, CLOCK)
    assert told.spans == (Span(time(6, 30), time(9, 0)),)


def test_shade_that_was_given_is_by_the_clock_as_it_stands(tmp_path: Path) -> None:
    seen = {"elevations": {"E1": {"shade_hours": [{"month": "jul", "from": "06:00", "to": "10:30"}]}}}
    for site in ({}, CLOCK):
        assert months(tmp_path, merged(seen, site))[0].spans == (Span(time(6, 30), time(10, 30)),)


def test_a_month_is_by_the_clock_of_its_middle_day(tmp_path: Path) -> None:
    # Summer time ends on November 7, 2027, in the United States (Energy Policy Act of 2005, section 110): the shift
    # stands an hour later under the sun in November than in October.
    autumn = {"schedule": {"spray_start": "2027-10-01", "spray_end": "2027-11-30", "shift_start": "05:00"}}
    october, november = months(tmp_path, merged(CLOCK | {"elevations": {"E1": {"facing": "N"}}}, autumn))
    # Sunrise on the 15th at this place by pvlib as above: 7:13 and 6:49 by the clock.
    assert (lost(october)["dark"], lost(november)["dark"]) == (
        pytest.approx(2.22, abs=0.1),
        pytest.approx(1.82, abs=0.1),
    )


@pytest.mark.parametrize(
    ("change", "paths"),
    [
        ({"site": "drop"}, ["site.latitude"]),
        (
            {"schedule": {"shift_start": "drop", "shift_hours": "drop"}},
            ["schedule.shift_start", "schedule.shift_hours"],
        ),
        ({"elevations": {"E1": {"facing": "drop", "name": "Front"}}}, ["elevations.E1.facing"]),
    ],
)
def test_what_is_missing_is_named(change: Any, paths: list[str], tmp_path: Path) -> None:
    with pytest.raises(Absent) as absent:
        months(tmp_path, change)
    assert [dotted_path(path) for path in absent.value.paths] == paths


def test_the_sum_shows_what_takes_the_hours() -> None:
    made = worked("usable-hours", {"latitude": "41.2", "facing": "S", "month": "jun", "shift": "06:00-16:00"})
    assert made.result == pytest.approx(1.466, abs=0.002)
    assert line(made, "S_d") == pytest.approx(10)
    assert made.notes[0] == "Hours: 06:30 to 07:58."


@pytest.mark.parametrize(
    ("change", "said"),
    [({"latitude": "95"}, "latitude is 95°"), ({"month": "sommer"}, "sommer"), ({"shift": "7"}, "'7'")],
)
def test_what_makes_no_day_is_refused(change: dict[str, str], said: str) -> None:
    keys = {"latitude": "41.2", "facing": "S", "month": "jun", "shift": "06:00-16:00"}
    with pytest.raises(Refused, match=said):
        worked("usable-hours", keys | change)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"longitude": "-75.4"}, "time_zone is missing"),
        ({"time_zone": "America/New_York"}, "longitude is missing"),
        ({"longitude": "-75.4", "time_zone": "America/NewYork"}, "did you mean America/New_York"),
        ({"longitude": "75.4", "time_zone": "America/New_York"}, "longitude 75.4° does not lie in America/New_York"),
        ({"longitude": "-190", "time_zone": "America/New_York"}, "longitude is -190°"),
    ],
)
def test_a_place_that_has_no_clock_is_refused(change: dict[str, str], said: str) -> None:
    keys = {"latitude": "41.2", "facing": "S", "month": "jun", "shift": "06:00-16:00"}
    with pytest.raises(Refused) as refused:
        worked("usable-hours", keys | change)
    (problem,) = refused.value.problems
    assert said in f"{problem.message} ({problem.hint})"


# By hand, from the declination of 23.45 degrees at most: north of 66.6 degrees mid-December has no sunrise and
# mid-June no sunset; at 41 degrees each day has both.
@pytest.mark.parametrize(
    ("latitude", "month", "said"),
    [("71", "dec", ["does not rise"]), ("71", "jun", ["does not set"]), ("41", "dec", [])],
)
def test_a_polar_day_says_that_sunrise_and_sunset_are_no_times(latitude: str, month: str, said: list[str]) -> None:
    made = worked("usable-hours", {"latitude": latitude, "facing": "N", "month": month, "shift": "07:00-15:30"})
    assert [words for words in ("does not rise", "does not set") if words in " ".join(made.notes)] == said
