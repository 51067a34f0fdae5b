"""Which limits hold for a step: the figure retyped, the stricter of two, and whose it is."""

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from specgen.model.source import Kind
from specgen.quantities.quantity import Quantity
from specgen.standards import load_standards
from specgen.weather.limits import StepLimits, find_limits
from tests.support import project_of


def limits(folder: Path, step: str, change: Any = None, elevation: str = "") -> StepLimits:
    return find_limits(project_of(folder, change), load_standards(), step, elevation)


def told(found: StepLimits) -> dict[tuple[str, str], tuple[float | None, int]]:
    units = {"temperature": "F", "temperature_difference": "F apart", "speed": "mph"}
    return {
        (one.reading, one.sense): (
            one.value.number(units[one.value.dimension])
            if isinstance(one.value, Quantity)
            else one.value and float(one.value),
            one.hold,
        )
        for one in found.limits
    }


def test_the_limits_of_the_gloss(tmp_path: Path) -> None:
    # 50 F and its hold: common practice, no source. 90 F: UFC 3-190-06, 7.4.1; 5 F: 9.6.6. 85 %: a public painting
    # specification. 8 mph: the project.
    assert told(limits(tmp_path, "gloss", {"weather": {"max_spray_wind": "8 mph"}})) == {
        ("air", "least"): (50, 24),
        ("surface", "least"): (50, 0),
        ("surface", "most"): (90, 0),
        ("humidity", "most"): (85, 0),
        ("margin", "least"): (5, 0),
        ("wind", "most"): (pytest.approx(8), 0),
        ("gust", "most"): (pytest.approx(8), 0),
        ("sun", "none"): (None, 0),
        ("rain", "none"): (None, 24),
    }


def test_the_limits_of_boards(tmp_path: Path) -> None:
    # 40 F: UFGS 07240, page 26. Its hold and the day after frost: common practice, no source.
    assert told(limits(tmp_path, "boards")) == {
        ("air", "least"): (40, 24),
        ("surface", "least"): (40, 0),
        ("humidity", "most"): (85, 0),
        ("margin", "least"): (5, 0),
        ("frost", "none"): (None, 24),
        ("rain", "none"): (None, 24),
    }


def test_metric_work_has_its_own_figures(tmp_path: Path) -> None:
    # 32 C on the wall and 3 C above the dew point: rounded to the safe side, and ISO 8502-4.
    found = limits(tmp_path, "gloss", {"package": {"units": "si"}})
    hot, margin = found.find("surface", "most"), found.find("margin", "least")
    assert hot is not None and hot.value == Quantity.of(32, "C")
    assert margin is not None and margin.value == Quantity.of(3, "C apart")


COATING = {"coating": {"gloss": {"least_dry_temperature": "55 F", "most_humidity": 70}}}


def test_the_stricter_figure_of_the_manufacturer_counts_for_its_own_coat(tmp_path: Path) -> None:
    gloss, primer = limits(tmp_path, "gloss", COATING), limits(tmp_path, "primer", COATING)
    assert told(gloss)["air", "least"] == (55, 24)
    assert told(gloss)["humidity", "most"] == (70, 0)
    assert told(primer)["air", "least"] == (50, 24)
    humidity = gloss.find("humidity", "most")
    assert humidity is not None and humidity.source.kind is Kind.MAKER


def test_a_looser_figure_gives_way(tmp_path: Path) -> None:
    loose = {"coating": {"gloss": {"least_dry_temperature": "45 F", "most_humidity": 95}}}
    loose |= {"weather": {"max_spray_wind": "20 mph", "most_humidity": 90}}
    found = told(limits(tmp_path, "gloss", loose))
    assert found["air", "least"] == (50, 24)
    assert found["humidity", "most"] == (85, 0)
    assert found["wind", "most"] == (pytest.approx(15), 0)  # a public painting specification


def test_a_wind_that_is_not_set_is_that_usual_in_the_trade(tmp_path: Path) -> None:
    found = limits(tmp_path, "gloss")
    wind = found.find("wind", "most")
    assert found.unset == ("weather.max_spray_wind",)
    # 8 mph: common practice, no source.
    assert wind is not None and wind.value == Quantity.of(8, "mph") and wind.source.kind is Kind.PRACTICE


def test_barrier_and_sealant_have_the_strictest_of_their_own(tmp_path: Path) -> None:
    barrier = {"walls": {"W1": {"wrb": {"kind": "fluid_applied", "least_temperature": "40 F", "dry_hours": 12}}}}
    assert told(limits(tmp_path, "wrb", barrier)) == {
        ("air", "least"): (40, 12),
        ("surface", "least"): (40, 0),
        ("rain", "none"): (None, 12),
    }
    joints = {
        "joints": {
            "J1": {"kind": "floor_line", "install_low": "45 F", "install_high": "85 F"},
            "J2": {"kind": "floor_line", "install_low": "50 F", "install_high": "90 F"},
        }
    }
    assert told(limits(tmp_path, "sealant", joints)) == {
        ("surface", "least"): (50, 0),
        ("surface", "most"): (85, 0),
        ("rain", "none"): (None, 0),
    }
    unset = {"joints": {"J1": {"kind": "floor_line"}}}
    assert limits(tmp_path, "sealant", unset).unset == ("joints.*.install_low", "joints.*.install_high")


def test_a_limit_itself_is_within(tmp_path: Path) -> None:
    found = limits(tmp_path, "gloss")
    air, humidity = found.find("air", "least"), found.find("humidity", "most")
    assert air is not None and humidity is not None
    assert [air.breaks(Quantity.of(Fraction(tenths, 10), "F")) for tenths in (499, 500, 501)] == [True, False, False]
    assert [humidity.breaks(percent) for percent in (84, 85, 86)] == [False, False, True]


def test_a_gloss_that_dries_longer_than_a_day_is_kept_warm_and_dry_until_then(tmp_path: Path) -> None:
    # 24 h: common practice, no source; the 36 h are given.
    found = limits(tmp_path, "gloss", {"gloss": {"dry_hours": 36}})
    assert [(one.reading, one.hold) for one in found.limits if one.hold] == [("air", 36), ("rain", 36)]


def test_heat_and_sun_keep_off_what_its_instructions_keep_them_off(tmp_path: Path) -> None:
    own = {"most_temperature": "100 F", "direct_sun": "no"}
    walls = {"W1": {"base_coat": own, "attachment": {"most_temperature": "95 F"}}, "W2": {"base_coat": own}}
    found = told(limits(tmp_path, "mesh", {"walls": walls}))
    assert (found["surface", "most"], found["sun", "none"]) == ((pytest.approx(100), 0), (None, 0))
    boards = told(limits(tmp_path, "boards", {"walls": walls}))
    assert boards["surface", "most"] == (pytest.approx(95), 0)
    assert ("sun", "none") not in boards
    assert ("surface", "most") not in told(limits(tmp_path, "mesh"))
