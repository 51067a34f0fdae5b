"""Width of the corner strip of higher wind pressure: which of its four bounds rules."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen import computing
from specgen.computing.arguments import direct
from specgen.model.absence import Absent
from specgen.model.problem import Refused
from specgen.model.working import Working
from specgen.resolving.provider import Resolver
from tests.computing._figures import beside
from tests.support import case_of


def strip(width: str, height: str) -> Working:
    return direct(computing.find("wind-corner-strip"), {"least_width": width, "height": height})


# ASCE 7-16, figure 30.3-1, from memory: 10 % of the least width or 0.4 h, the smaller, not below 4 % of the width or
# 3 ft. Over 60 ft, figure 30.5-1, from memory: 10 % of the least width, not below 3 ft.
@pytest.mark.parametrize(
    ("width", "height", "wanted"),
    [
        ("64 ft", "26 ft", 6.4),
        ("100 ft", "20 ft", 8.0),
        ("300 ft", "15 ft", 12.0),
        ("25 ft", "20 ft", 3.0),
        ("30 ft", "30 ft", 3.0),
        ("200 ft", "20 ft", 8.0),
        ("80 ft", "7 ft", 3.2),
        ("20 ft", "90 ft", 3.0),
        ("400 ft", "90 ft", 40.0),
        ("400 ft", "60 ft", 24.0),
    ],
)
def test_the_bound_that_rules(width: str, height: str, wanted: float) -> None:
    assert strip(width, height).result == pytest.approx(wanted)


# ASCE 7-16, figure 30.3-1, exception, from memory: over 300 ft wide, roof to 7 degrees, at most 0.8 h.
@pytest.mark.parametrize(
    ("width", "height", "wanted"), [("400 ft", "15 ft", 12.0), ("400 ft", "60 ft", 24.0), ("301 ft", "10 ft", 8.0)]
)
def test_the_strip_of_a_very_wide_building_is_bounded_by_its_height_under_a_flat_roof(
    width: str, height: str, wanted: float
) -> None:
    made = strip(width, height)
    assert beside(made)["width under a flat roof"] == pytest.approx(wanted)
    assert made.result >= wanted
    assert any("0.8 of the height" in note for note in made.notes)


def test_no_bound_by_the_height_is_told_of_a_narrower_or_higher_building() -> None:
    assert beside(strip("300 ft", "15 ft")) == beside(strip("400 ft", "90 ft")) == {}


@given(st.floats(5, 1000), st.floats(5, 60))
def test_a_larger_building_has_no_narrower_strip_and_the_least_holds(width: float, height: float) -> None:
    base = strip(f"{width:.6f} ft", f"{height:.6f} ft").result
    assert base >= max(3, 0.04 * width) - 1e-6
    assert base <= max(3, 0.1 * width) + 1e-6
    assert strip(f"{width + 5:.6f} ft", f"{height:.6f} ft").result >= base - 1e-6
    assert strip(f"{width:.6f} ft", f"{min(60, height + 5):.6f} ft").result >= base - 1e-6


@given(st.floats(5, 1000), st.floats(5, 100))
def test_both_unit_systems_agree(width: float, height: float) -> None:
    ip = strip(f"{width:.6f} ft", f"{height:.6f} ft")
    si = strip(f"{round(width, 6) * 0.3048:.10f} m", f"{round(height, 6) * 0.3048:.10f} m")
    assert (ip.unit, si.unit) == ("ft", "m")
    assert si.result / 0.3048 == pytest.approx(ip.result, rel=1e-6)


@pytest.mark.parametrize(("width", "height"), [("0 ft", "20 ft"), ("40 ft", "0 ft"), ("-4 ft", "20 ft")])
def test_no_building_is_refused(width: str, height: str) -> None:
    with pytest.raises(Refused, match="it lies from 4 ft"):
        strip(width, height)


def test_a_project_takes_its_building(tmp_path: Path) -> None:
    job = {"building": {"least_plan_width": "64 ft", "mean_roof_height": "26 ft"}}
    made = Resolver(case_of(tmp_path, job).project, computing.find)((), "wind-corner-strip")
    assert made.result == pytest.approx(6.4)
    with pytest.raises(Absent, match=r"building\.least_plan_width"):
        Resolver(case_of(tmp_path, {}).project, computing.find)((), "wind-corner-strip")
