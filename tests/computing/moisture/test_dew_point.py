"""The dew point over water and the frost point over ice: published cases, and reference formulas over whole grids."""

import math
from collections.abc import Callable

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing.asked import line, sum_of


def dew(air: float, humidity: float, unit: str = "C") -> Working:
    return sum_of("dew-point", air=f"{air:.9f} {unit}", rh=f"{humidity:.9f}")


# Air in C, humidity, dew point, and where it stands printed.
PUBLISHED = [
    (25, 60, 16.70, "worked example of a dew point page after Alduchov and Eskridge 1996, their constants"),
    (20, 50, 9.27, "ASHRAE equation, inverted; from memory"),
    (10, 80, 6.71, "ASHRAE equation, inverted; from memory"),
    (30, 50, 18.4, "ISO 8502-4, table; from memory"),
    (20, 85, 17.4, "ISO 8502-4, table; from memory"),
]


@pytest.mark.parametrize(("air", "humidity", "printed", "where"), PUBLISHED)
def test_printed_dew_points(air: float, humidity: float, printed: float, where: str) -> None:
    assert dew(air, humidity).result == pytest.approx(printed, abs=0.05), where


def test_spring_weather_in_trade_units() -> None:
    # 70 F and 50 %: 50.5 F by the ASHRAE equation, from memory.
    assert dew(70, 50, "F").result == pytest.approx(50.5, abs=0.1)


def reference(air: int, humidity: int) -> float:
    psychrolib.SetUnitSystem(psychrolib.SI)
    return float(psychrolib.GetTDewPointFromRelHum(air, humidity / 100))


@pytest.mark.parametrize("air", range(1, 61, 3))
def test_warm_air_agrees_with_a_general_library_of_moist_air(air: int) -> None:
    # That library inverts the ASHRAE equations, over ice below freezing: there it tells our frost point.
    for humidity in range(2, 101, 2):
        made = dew(air, humidity)
        told = line(made, "T_f") if made.secondary_results else made.result
        assert told == pytest.approx(reference(air, humidity), abs=0.1), humidity


def express_over_water(celsius: float) -> float:
    """Pa over water, also below freezing: Murphy and Koop 2005, as a meteorological page prints it."""
    t = celsius + 273.15
    more = 53.878 - 1331.22 / t - 9.44523 * math.log(t) + 0.014025 * t
    return math.exp(
        54.842763 - 6763.22 / t - 4.21 * math.log(t) + 0.000367 * t + math.tanh(0.0415 * (t - 218.8)) * more
    )


def express_over_ice(celsius: float) -> float:
    psychrolib.SetUnitSystem(psychrolib.SI)
    return float(psychrolib.GetSatVapPres(celsius))


def halved(wanted: float, pressure: Callable[[float], float], high: float) -> float:
    """The temperature in C at which a rising pressure comes to what is wanted."""
    low = -90.0
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if pressure(middle) < wanted else (low, middle)
    return high


@pytest.mark.parametrize("air", range(-25, 61, 5))
def test_the_dew_point_over_water_agrees_with_another_formula_below_freezing_too(air: int) -> None:
    for humidity in range(20, 101, 5):
        wanted = halved(humidity / 100 * express_over_water(air), express_over_water, 65)
        assert dew(air, humidity).result == pytest.approx(wanted, abs=0.1), humidity


@pytest.mark.parametrize("air", range(-27, 1, 3))
def test_the_frost_point_agrees_with_the_ice_of_a_general_library(air: int) -> None:
    for humidity in range(20, 100, 5):
        wanted = halved(humidity / 100 * express_over_water(air), express_over_ice, 0)
        assert line(dew(air, humidity), "T_f") == pytest.approx(wanted, abs=0.06), humidity


def test_which_of_the_two_is_told_is_said() -> None:
    warm, cold = dew(20, 50), dew(-5, 50)
    assert [step.name for step in warm.steps][-1] == "dew point, over water"
    assert warm.secondary_results == () and warm.notes == ()
    assert [step.name for step in cold.secondary_steps] == ["frost point, over ice"]
    assert "frost comes first" in cold.notes[0]
    assert "over water and not over ice" in cold.notes[1]


def test_dry_air_above_freezing_has_a_frost_point_and_an_ordinary_humidity() -> None:
    made = dew(10, 20)
    assert made.secondary_results == ("T_f",)
    assert len(made.notes) == 1


@given(st.integers(-25, 60), st.integers(20, 99))
def test_the_dew_point_moves_as_physics_says(air: int, humidity: int) -> None:
    base = dew(air, humidity)
    assert base.result < air
    assert dew(air, humidity + 1).result > base.result
    assert dew(air - 0.5, humidity).result < base.result
    if base.secondary_results:
        assert base.result < line(base, "T_f") < 0


@given(st.integers(-25, 60), st.integers(20, 100))
def test_air_cooled_to_its_dew_point_is_saturated(air: int, humidity: int) -> None:
    at = dew(air, humidity).result
    assert dew(at, 100).result == pytest.approx(at, abs=1e-6)


@given(st.integers(-45, 60))
def test_saturated_air_is_at_its_dew_point(air: int) -> None:
    assert dew(air, 100).result == pytest.approx(air, abs=1e-9)


@given(st.integers(-25, 60), st.integers(20, 100))
def test_both_unit_systems_agree(air: int, humidity: int) -> None:
    si, ip = dew(air, humidity), dew(air * 1.8 + 32, humidity, "F")
    assert (si.unit, ip.unit) == ("C", "F")
    assert ip.result == pytest.approx(si.result * 1.8 + 32, abs=1e-7)
    assert ip.secondary_results == si.secondary_results


def test_dew_and_frost_meet_at_freezing() -> None:
    warm, cold = dew(0, 100), dew(-0.001, 100)
    assert warm.secondary_results == ()
    assert line(cold, "T_f") == pytest.approx(cold.result, abs=1e-3)


def test_the_result_is_given_in_the_unit_asked_for() -> None:
    made = sum_of("dew-point", air="70 F", rh="50%", unit="C")
    assert made.result == pytest.approx((dew(70, 50, "F").result - 32) / 1.8)


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ({"air": "70 F", "rh": "0"}, "rh is 0 % .it lies from 1 to 100 %"),
        ({"air": "70 F", "rh": "0.5%"}, "rh is 0.5 %"),
        ({"air": "70 F", "rh": "100.1"}, "rh is 100.1 %"),
        ({"air": "70 F", "rh": "-5"}, "rh is -5 %"),
        ({"air": "-20 C", "rh": "8"}, "it lies from 8.87 to 100 %"),  # e^-4.0021 over e^-1.5794, the form by hand
        ({"air": "-40 C", "rh": "30"}, "rh is 30 %"),
        ({"air": "150 F", "rh": "50"}, "air is 150 .F .it lies from -49 .F to 140 .F"),
        ({"air": "-46 C", "rh": "50"}, "it lies from -45 .C to 60 .C"),
        ({"air": "70", "rh": "50"}, "has no unit"),
        ({"air": "70 F", "rh": "half"}, "is not a number"),
        ({"air": "70 F"}, "rh must be given"),
    ],
)
def test_what_has_no_dew_point_is_refused_with_the_range(keys: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        sum_of("dew-point", **keys)


@given(st.floats(-45, 60), st.floats(0, 100))
def test_any_air_has_a_dew_point_in_the_range_of_the_formula_or_is_refused(air: float, humidity: float) -> None:
    try:
        made = dew(air, humidity)
    except Refused:
        # Only air too dry for the formula: below 1 %, or with its dew point below -45 C by the reference formula.
        assert humidity < 1 or halved(humidity / 100 * express_over_water(air), express_over_water, 65) < -44.5
    else:
        assert -45.001 <= made.result <= air + 1e-6
