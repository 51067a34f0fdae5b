"""GO or NO-GO by readings: what is measured must be told, what fails by how much, what the sky adds."""

from pathlib import Path
from typing import Any

import psychrolib
import pytest

from specgen.quantities.quantity import Quantity
from specgen.standards import load_standards
from specgen.weather.going import GoAnswer, SiteReadings, judge_go
from specgen.weather.limits import find_limits
from tests.support import project_of

SITE = {"weather": {"max_spray_wind": "8 mph"}, "elevations": {"E1": {"facing": "N"}}}
GOOD: dict[str, Any] = {
    "air": Quantity.of(62, "F"),
    "surface": Quantity.of(70, "F"),
    "humidity": 60,
    "wind": Quantity.of(6, "mph"),
}


def ask(folder: Path, step: str = "gloss", change: Any = None, elevation: str = "", **readings: Any) -> GoAnswer:
    limits = find_limits(project_of(folder, SITE | (change or {})), load_standards(), step, elevation)
    return judge_go(limits, SiteReadings(**readings))


def fails(answer: GoAnswer) -> list[str]:
    return [one.limit.reading for one in answer.held if one.fails]


def test_good_readings_are_go_and_the_sky_is_left_to_be_looked_at(tmp_path: Path) -> None:
    answer = ask(tmp_path, **GOOD)
    assert answer.goes
    assert [one.said for one in answer.look_first] == [
        "forecast low for 24 h minimum {}",
        "gusts maximum {}",
        "no direct sun on the wall",
        "no rain",
        "no rain forecast for 24 h",
    ]


def test_with_all_told_nothing_is_left_to_look_at(tmp_path: Path) -> None:
    sky = {"gust": Quantity.of(8, "mph"), "rain": False, "sun": False, "forecast_rain": False}
    answer = ask(tmp_path, **GOOD, **sky, forecast_low=Quantity.of(50, "F"))
    assert answer.goes
    assert answer.look_first == ()


@pytest.mark.parametrize("name", GOOD)
def test_without_a_measured_reading_it_is_never_go(name: str, tmp_path: Path) -> None:
    answer = ask(tmp_path, **{key: value for key, value in GOOD.items() if key != name})
    assert not answer.goes
    assert answer.not_told == (name,)


def test_boards_need_no_wind(tmp_path: Path) -> None:
    answer = ask(tmp_path, "boards", **{key: value for key, value in GOOD.items() if key != "wind"})
    assert answer.goes
    assert "no frost on the wall in the last 24 h" in [one.said for one in answer.look_first]


BAD = [
    ({"air": Quantity.of("49.9", "F")}, ["air"]),
    ({"surface": Quantity.of("90.1", "F")}, ["surface"]),
    ({"humidity": 86}, ["humidity"]),
    ({"wind": Quantity.of("8.1", "mph")}, ["wind"]),
    ({"gust": Quantity.of(12, "mph")}, ["gust"]),
    ({"sun": True}, ["sun"]),
    ({"rain": True}, ["rain"]),
    ({"forecast_rain": True}, ["rain"]),
    ({"forecast_low": Quantity.of(49, "F")}, ["air"]),
    ({"surface": Quantity.of(52, "F")}, ["margin"]),
    ({"air": Quantity.of(50, "F"), "surface": Quantity.of(90, "F"), "wind": Quantity.of(8, "mph")}, []),
]


@pytest.mark.parametrize(("change", "wanted"), BAD)
def test_a_reading_beyond_its_limit_fails_and_one_on_it_does_not(
    change: Any, wanted: list[str], tmp_path: Path
) -> None:
    answer = ask(tmp_path, **GOOD | change)
    assert fails(answer) == wanted
    assert answer.goes is (not wanted)


def test_the_dew_point_is_that_of_a_psychrometrics_library(tmp_path: Path) -> None:
    psychrolib.SetUnitSystem(psychrolib.IP)
    wanted = psychrolib.GetTDewPointFromRelHum(62, 0.60)
    dew_point = ask(tmp_path, **GOOD).readings.find_dew_point()
    assert dew_point is not None and dew_point.number("F") == pytest.approx(wanted, abs=0.1)


def test_no_rounding_excuses_a_margin(tmp_path: Path) -> None:
    # The dew point of 62 F and 60 % is 47.95 F: a wall of 52.9 F lies 4.95 F above it.
    assert fails(ask(tmp_path, **GOOD | {"surface": Quantity.of("52.9", "F")})) == ["margin"]
    assert fails(ask(tmp_path, **GOOD | {"surface": Quantity.of(53, "F")})) == []


def test_a_tent_keeps_rain_off_and_a_heated_one_the_cold_of_the_night(tmp_path: Path) -> None:
    heated = {"shade": {"S": {"elevation": "E1", "kind": "tent", "heated": True}}}
    sky = {"rain": True, "forecast_rain": True, "forecast_low": Quantity.of(30, "F")}
    assert ask(tmp_path, "gloss", heated, "E1", **GOOD, **sky).goes
    assert fails(ask(tmp_path, "gloss", heated, "", **GOOD, **sky)) == ["air", "rain", "rain"]
