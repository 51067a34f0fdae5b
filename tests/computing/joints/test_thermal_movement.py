"""Thermal movement against published lines and a general units library."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing._figures import resolver_of, worked
from tests.computing.units_library import UNITS

BRICK = {"length": "30 ft", "alpha": "3.6e-6 /F", "temperature_range": "45 F"}


def moved(**more: str) -> Working:
    return worked("thermal-movement", BRICK, **more)


# Change of keys, change of length printed, half of its last digit, and where.
PUBLISHED = [
    ({}, 0.0583, 5e-5, "Cornell University, ARCH 262, fall 2007: closing, 105 F less 60 F"),
    ({"temperature_range": "90 F"}, 0.1166, 5e-5, "the same: opening, 75 F and 15 F below zero"),
    (
        {"length": "208 in", "alpha": "4e-6 /F", "temperature_range": "100 F"},
        208 * 0.0004,
        1e-9,
        "Conspectus, Brick Movement Joints, January 2011: 0.000004 x 100 F is 0.0004",
    ),
]


@pytest.mark.parametrize(("more", "wanted", "apart", "where"), PUBLISHED)
def test_published_movements(more: dict[str, str], wanted: float, apart: float, where: str) -> None:
    assert moved(**more).result == pytest.approx(wanted, abs=apart), where
    assert moved(**more).unit == "in"


def test_a_units_library_finds_the_same_movement() -> None:
    wanted = 6 * UNITS.m * 23.8e-6 / UNITS.delta_degC * (70 * UNITS.delta_degC)
    metric = moved(length="6 m", alpha="23.8e-6 /C", temperature_range="70 C")
    assert metric.unit == "mm"
    assert metric.result == pytest.approx(wanted.to("mm").magnitude)
    mixed = moved(length="19.68503937 ft", alpha="23.8e-6 /C", temperature_range="126 F")
    assert mixed.result == pytest.approx(wanted.to("inch").magnitude)


@given(st.integers(0, 3000), st.integers(0, 60), st.integers(0, 200))
def test_both_unit_systems_agree(inches: int, millionths: int, degrees: int) -> None:
    ip = moved(length=f"{inches} in", alpha=f"{millionths}e-6 /F", temperature_range=f"{degrees} F")
    si = moved(
        length=f"{inches * 25.4:.4f} mm",
        alpha=f"{millionths * 1.8:.4f}e-6 /C",
        temperature_range=f"{degrees / 1.8:.12f} C",
    )
    assert si.result == pytest.approx(ip.result * 25.4, rel=1e-9, abs=1e-12)


@given(st.integers(0, 400), st.integers(0, 40), st.integers(0, 200))
def test_twice_of_anything_moves_twice_as_far(feet: int, millionths: int, degrees: int) -> None:
    keys = {"length": f"{feet} ft", "alpha": f"{millionths}e-6 /F", "temperature_range": f"{degrees} F"}
    twice = {"length": f"{2 * feet} ft", "alpha": f"{2 * millionths}e-6 /F", "temperature_range": f"{2 * degrees} F"}
    for key, value in twice.items():
        assert moved(**keys | {key: value}).result == pytest.approx(2 * moved(**keys).result)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"length": "-1 ft"}, "length is -1 ft"),
        ({"alpha": "-1e-6 /F"}, "alpha is"),
        ({"temperature_range": "-10 F"}, "temperature_range is"),
        ({"length": "30"}, "has no unit"),
        ({"alpha": "3.6e-6"}, "has no unit"),
        ({"temperature_range": "10 ft"}, "temperature"),
        (
            {"length": "999999999999e99 ft", "alpha": "1e99 /F", "temperature_range": "1e99 F"},
            "length is .*alpha is .*temperature_range is ",
        ),
    ],
)
def test_what_has_no_sense_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        moved(**wrong)


def test_a_project_is_told_to_give_keys(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="from keys, not from a project"):
        resolver_of(tmp_path, {})((), "thermal-movement")
