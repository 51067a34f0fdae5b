"""The surface above the dew point: the published margins, the dew point it rests on, frost, and both unit systems."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing.asked import line, sum_of


def margin(air: str, humidity: float, surface: str) -> Working:
    return sum_of("surface-margin", air=air, rh=str(humidity), surface=surface)


# Air, humidity, least surface in F: dew point by the Magnus form of Alduchov and Eskridge 1996 plus 5 F, computed.
@pytest.mark.parametrize(
    ("air", "humidity", "least"), [("68 F", 50, 53.7), ("70 F", 50, 55.5), ("50 F", 80, 49.1), ("40 F", 85, 40.8)]
)
def test_the_least_surface_stands_five_degrees_above_the_dew_point(air: str, humidity: float, least: float) -> None:
    # UFC 3-190-06: no paint on a surface less than 5 F above the dew point.
    made = margin(air, humidity, "60 F")
    assert line(made, "T_m") == pytest.approx(least, abs=0.1)
    assert [step.symbol for step in made.secondary_steps] == ["T_m"]
    assert made.secondary_steps[0].unit == "F"


def test_metric_sums_take_the_metric_margin() -> None:
    # The same text prints 3 C, which is more than 5 F; the one of the unit system counts.
    made = margin("20 C", 50, "15 C")
    assert line(made, "T_m") == pytest.approx(line(made, "T_d") + 3)
    assert made.unit == "C apart"
    assert line(margin("68 F", 50, "59 F"), "T_m") < line(made, "T_m") * 1.8 + 32


def test_the_margin_is_surface_less_dew_point() -> None:
    made = margin("70 F", 50, "55 F")
    assert made.result == pytest.approx(55 - sum_of("dew-point", air="70 F", rh="50").result)
    assert margin("70 F", 50, "50 F").result < 0 < made.result


def test_the_margin_to_frost_stands_beside_below_freezing() -> None:
    made = margin("30 F", 70, "33 F")
    assert [step.symbol for step in made.secondary_steps] == ["T_m", "M_f"]
    assert line(made, "M_f") < made.result
    assert "frost comes first" in made.notes[0]


@given(st.integers(-20, 55), st.integers(30, 99), st.integers(-30, 80))
def test_the_margin_moves_as_physics_says(air: int, humidity: int, surface: int) -> None:
    base = margin(f"{air} C", humidity, f"{surface} C").result
    assert margin(f"{air} C", humidity + 1, f"{surface} C").result < base
    assert margin(f"{air + 1} C", humidity, f"{surface} C").result < base
    assert margin(f"{air} C", humidity, f"{surface + 1} C").result == pytest.approx(base + 1)


@given(st.integers(-20, 55), st.integers(30, 100), st.integers(-30, 80))
def test_both_unit_systems_agree(air: int, humidity: int, surface: int) -> None:
    si = margin(f"{air} C", humidity, f"{surface} C")
    ip = margin(f"{air * 1.8 + 32:.6f} F", humidity, f"{surface * 1.8 + 32:.6f} F")
    assert ip.unit == "F apart"
    assert ip.result == pytest.approx(si.result * 1.8, abs=1e-6)


def test_a_difference_in_another_unit_is_no_temperature() -> None:
    # 9 F apart is 5 C apart, not -12.8 C.
    made = sum_of("surface-margin", air="70 F", rh="50", surface="60 F", unit="C apart")
    assert made.result == pytest.approx(margin("70 F", 50, "60 F").result / 1.8)


@pytest.mark.parametrize(
    ("air", "humidity", "surface", "said"),
    [
        ("70 F", 0, "60 F", "rh is 0 %"),
        ("70 F", 101, "60 F", "rh is 101 %"),
        ("70 F", 50, "300 F", "surface is 300 .F .it lies from -80 .F to 250 .F"),
        ("200 F", 50, "60 F", "air is 200"),
    ],
)
def test_what_lies_outside_the_range_is_refused(air: str, humidity: float, surface: str, said: str) -> None:
    with pytest.raises(Refused, match=said):
        margin(air, humidity, surface)
