"""Saturation pressure by ISO 13788: the standard's own formulas retyped, and a general library over a grid."""

import math

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing.asked import sum_of


def pressure(temperature: float, unit: str = "C") -> Working:
    return sum_of("saturation-pressure", temperature=f"{temperature:.9f} {unit}")


# Computed from the formulas of ISO 13788, to a tenth of a pascal.
@pytest.mark.parametrize(("celsius", "pascals"), [(-10, 259.3), (0, 610.5), (10, 1227.3), (20, 2337.0)])
def test_the_formulas_of_the_standard(celsius: float, pascals: float) -> None:
    assert pressure(celsius).result == pytest.approx(pascals, abs=0.05)
    assert pressure(celsius * 1.8 + 32, "F").result == pytest.approx(pascals, abs=0.05)


@pytest.mark.parametrize(("low", "high", "within"), [(0, 60, 0.002), (-20, 0, 0.006), (-40, -20, 0.02)])
def test_a_general_library_of_moist_air_agrees(low: int, high: int, within: float) -> None:
    psychrolib.SetUnitSystem(psychrolib.SI)
    for celsius in range(low, high + 1):
        assert pressure(celsius).result == pytest.approx(psychrolib.GetSatVapPres(celsius), rel=within), celsius


@pytest.mark.parametrize(
    ("temperature", "unit", "said"),
    [(0, "C", "over water"), (32, "F", "over water"), (-0.1, "C", "over ice"), (31.9, "F", "over ice")],
)
def test_water_or_ice_is_said(temperature: float, unit: str, said: str) -> None:
    assert pressure(temperature, unit).steps[-1].name == f"saturation pressure, {said}"


@given(st.floats(-39, 59), st.floats(0.01, 1))
def test_warmer_air_holds_more_vapor(celsius: float, more: float) -> None:
    assert pressure(celsius + more).result > pressure(celsius).result


@given(st.floats(-39, 59))
def test_both_unit_systems_agree(celsius: float) -> None:
    assert pressure(celsius * 1.8 + 32, "F").result == pytest.approx(pressure(celsius).result, rel=1e-6)


@given(st.floats(0.1, 59))
def test_the_pressure_leads_back_to_the_temperature(celsius: float) -> None:
    # The inverse as ISO 13788 prints it for 610.5 Pa and more.
    share = math.log(pressure(celsius).result / 610.5)
    assert 237.3 * share / (17.269 - share) == pytest.approx(celsius, abs=1e-6)


def test_the_result_is_given_in_the_unit_asked_for() -> None:
    assert sum_of("saturation-pressure", temperature="20 C", unit="kPa").result == pytest.approx(2.337, abs=1e-4)


@pytest.mark.parametrize(
    ("temperature", "said"),
    [("61 C", "it lies from -40 .C to 60 .C"), ("-41 F", "it lies from -40 .F to 140 .F"), ("20", "has no unit")],
)
def test_what_lies_outside_the_range_is_refused(temperature: str, said: str) -> None:
    with pytest.raises(Refused, match=said):
        sum_of("saturation-pressure", temperature=temperature)
