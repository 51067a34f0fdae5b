"""The fit hours of a public year, worked out a second time by data frames and a psychrometrics library.

Limits: 50 to 90 F on the wall and 50 F of air, common practice, no source, and UFC 3-190-06, 7.4.1; 85 % humidity, a
public painting specification; 5 F above the dew point, UFC 3-190-06, 9.6.6; 24 h without rain or cold, common practice,
no source. The wind is that of the project.
"""

from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pandas as pd
import psychrolib
import pytest
from pvlib import irradiance, solarposition
from pvlib.iotools import read_tmy3

from specgen.model.project import Project
from specgen.standards import load_standards
from specgen.weather.faces import Asked, FaceHours, Surface, judge_faces
from specgen.weather.hours import HourlyData
from specgen.weather.reading import read_hours
from specgen.weather.summary import summarize
from tests.support import project_of
from tests.weather.hourly import PUBLIC_YEAR

WIND = 8 * 0.44704  # m/s
HOT = (90 - 32) / 1.8  # C
MARGIN = 5 / 1.8
SITE: dict[str, Any] = {
    "site": {"latitude": "36.1 deg"},
    "weather": {"max_spray_wind": "8 mph"},
    "schedule": {"shift_start": "06:00", "shift_hours": 10},
    "colors": {"C1": {"kind": "standard", "solar_reflectance": 0.4, "emittance": 0.8}},
    "elevations": {f"E{facing}": {"facing": f"{facing} deg", "color": "C1"} for facing in (0, 100, 180, 250)},
}
SPREAD = 24  # hours of the hold


@cache
def data() -> HourlyData:
    return read_hours(PUBLIC_YEAR)


@cache
def frame() -> Any:
    """The year as another library reads it: air C, humidity %, wind m/s, rain mm."""
    read, _ = read_tmy3(str(PUBLIC_YEAR), map_variables=True)
    columns = {"temp_air": "air", "relative_humidity": "humidity", "wind_speed": "wind", "Lprecip depth (mm)": "rain"}
    return read[list(columns)].rename(columns=columns).reset_index(drop=True).astype(float)


def in_hold(found: Any) -> Any:
    """Whether something is so in this hour or one of the 24 that follow."""
    ahead = pd.concat([found.shift(-step, fill_value=False) for step in range(SPREAD + 1)], axis=1)
    return ahead.any(axis=1)


@cache
def dew_points() -> Any:
    psychrolib.SetUnitSystem(psychrolib.SI)
    year = frame()
    pairs = zip(year.air, year.humidity, strict=True)
    return pd.Series([psychrolib.GetTDewPointFromRelHum(air, min(rh, 100) / 100) for air, rh in pairs])


def fit(least: float, most: float | None, wind: float | None) -> Any:
    """The fit hours of the year with the wall as warm as the air."""
    year = frame()
    good = ~in_hold(year.air < least) & ~in_hold(year.rain > 0)
    good &= (year.humidity <= 85) & (year.air - dew_points() >= MARGIN)
    if most is not None:
        good &= year.air <= most
    if wind is not None:
        good &= year.wind <= wind
    good[-SPREAD:] = False
    return good


def judge(folder: Path, step: str, surface: Surface, all_hours: bool, change: Any = None) -> tuple[FaceHours, ...]:
    project: Project = project_of(folder, SITE | (change or {}))
    return judge_faces(project, load_standards(), data(), Asked(step, surface, all_hours)).faces


def fit_of(face: FaceHours) -> Any:
    return pd.Series([not bits for bits in face.causes])


def test_the_year_is_read_as_another_library_reads_it() -> None:
    year = frame()
    assert len(data()) == len(year) == 8760
    for name in year:
        assert data().column(name) == pytest.approx(list(year[name]), abs=1e-9)


@pytest.mark.parametrize(
    ("step", "least", "most", "wind"),
    [
        ("gloss", 10.0, HOT, WIND),
        ("primer", 10.0, HOT, WIND),
        ("smoothing_1", 10, None, None),
    ],
)
def test_every_fit_hour_of_the_year_is_found_and_no_other(
    step: str, least: float, most: float | None, wind: float | None, tmp_path: Path
) -> None:
    (face,) = judge(tmp_path, step, "air", all_hours=True)
    wanted = fit(least, most, wind)
    assert 500 < wanted.sum() < 3000
    # The two dew points differ by less than 0.02 C; no hour that is fit but for them lies so near to the limit.
    assert list(fit_of(face)) == list(wanted)
    summary = summarize(data(), face.causes)
    assert (summary.fit, summary.unknown, summary.worked) == (wanted.sum(), SPREAD, 8760)
    assert sum(window.hours for window in summary.windows) == wanted.sum()


def test_boards_wait_for_frost_to_be_gone_for_a_day(tmp_path: Path) -> None:
    (face,) = judge(tmp_path, "boards", "air", all_hours=True)
    frozen = frame().air <= 0
    before = pd.concat([frozen.shift(step, fill_value=False) for step in range(SPREAD + 1)], axis=1).any(axis=1)
    wanted = fit((40 - 32) / 1.8, None, None) & ~before
    # The two dew points differ by less than 0.02 C: only an hour that lies as near to its limit may be told otherwise.
    near = (frame().air - dew_points() - MARGIN).abs() < 0.02
    assert list(fit_of(face)[~near]) == list(wanted[~near])
    assert near.sum() < 150


def test_shift_daylight_and_own_shade_are_those_of_a_solar_library(tmp_path: Path) -> None:
    """Without a station in the table the clock is solar time, so the library is asked for solar time too."""
    faces = judge(tmp_path, "gloss", "air", all_hours=False)
    wanted = fit(10, HOT, WIND)
    starts = data().starts
    hour = np.array([start.hour for start in starts])
    day = np.array([start.timetuple().tm_yday for start in starts])
    shift = (hour >= 6) & (hour < 16)
    leap = np.array([start.year % 4 == 0 for start in starts])
    day = day - (leap & (day > 59))
    declination = solarposition.declination_cooper69(day)
    sun = {part: place_sun(declination, hour + part) for part in (0, 0.5, 1)}
    direct = np.array(data().column("direct"), dtype=float)
    for face in faces:
        facing = float(face.elevation[1:])
        lit = np.zeros(len(starts), dtype=bool)
        for zenith, azimuth in sun.values():
            cosine = irradiance.aoi_projection(90, facing, zenith, azimuth)
            lit |= (zenith < 90) & (cosine > 1e-6)
        ours = fit_of(face)
        theirs = wanted & shift & (sun[0.5][0] < 90) & ~(lit & (direct > 120))
        assert list(ours) == list(theirs), face.elevation
    counts = {face.elevation: sum(not bits for bits in face.causes) for face in faces}
    assert max(counts, key=counts.__getitem__) == "E0"  # a north wall has most shade


def place_sun(declination: Any, hour: Any) -> tuple[Any, Any]:
    """Zenith and azimuth in degrees by the library's own formulas, at solar time."""
    north, turn = np.radians(36.1), np.radians(15 * (hour - 12))
    zenith = solarposition.solar_zenith_analytical(north, turn, declination)
    azimuth = solarposition.solar_azimuth_analytical(north, turn, declination, zenith)
    return np.degrees(zenith), np.degrees(azimuth) % 360


def test_what_takes_an_hour_is_told_for_each_hour_that_is_lost(tmp_path: Path) -> None:
    for face in judge(tmp_path, "gloss", "model", all_hours=False):
        summary = summarize(data(), face.causes)
        for month in summary.months.values():
            assert month.worked == month.fit + month.unknown + sum(month.lost.values())
        assert summary.worked == 365 * 10


def test_a_modeled_wall_is_no_colder_than_the_air(tmp_path: Path) -> None:
    by_air = judge(tmp_path, "gloss", "air", all_hours=True)[0]
    modeled = judge(tmp_path, "gloss", "model", all_hours=True)
    cold, hot = 1 << 8, 1 << 9
    for face in modeled:
        pairs = list(zip(by_air.causes, face.causes, strict=True))
        assert not any(model & cold and not air & cold for air, model in pairs)
        assert sum(bool(model & hot) for _, model in pairs) > sum(bool(air & hot) for air, _ in pairs)
