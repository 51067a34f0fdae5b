"""The backer rod of a joint: wider than the joint by a quarter, and the diameters that are kept in stock."""

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.computing.joints.backer_rod import STOCK
from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing._figures import line, resolver_of, worked
from tests.support import mixed


def rod(width: str, **more: str) -> Working:
    return worked("backer-rod", {"width": width}, **more)


# Width, rod by UFGS 07 24 00, page 21: 25 % wider than the joint.
@pytest.mark.parametrize(
    ("width", "wanted"), [("3/4", "15/16"), ("1/2", "5/8"), ("1", "1-1/4"), ("3/8", "15/32"), ("1-1/2", "1-7/8")]
)
def test_a_rod_is_a_quarter_wider_than_its_joint(width: str, wanted: str) -> None:
    whole, _, part = wanted.rpartition("-")
    assert Fraction(rod(f"{width} in").result) == int(whole or 0) + Fraction(part)


# Width, next stock diameter: common practice, no source.
IN_STOCK = [
    ("1/8", 0.25),
    ("1/4", 0.375),
    ("3/8", 0.5),
    ("1/2", 0.625),
    ("5/8", 0.875),
    ("3/4", 1.0),
    ("7/8", 1.125),
    ("0.8", 1.0),
    ("1", 1.25),
    ("1-1/8", 1.5),
    ("1-1/4", 2.0),
    ("1-1/2", 2.0),
    ("1.6", 2.0),
    ("1.601", 2.5),
    ("2", 2.5),
    ("2-1/4", 3.0),
    ("2-1/2", 4.0),
    ("3.2", 4.0),
]


@pytest.mark.parametrize(("width", "wanted"), IN_STOCK)
def test_the_next_stock_diameter_stands_beside_it(width: str, wanted: float) -> None:
    made = rod(f"{width} in")
    assert [step.value for step in made.secondary_steps] == [wanted]


# The same in millimeters: common practice, no source.
@pytest.mark.parametrize(("width", "wanted"), [("4", 6), ("6", 8), ("10", 15), ("12", 15), ("20", 25), ("20.5", 30)])
def test_a_metric_reader_is_told_a_metric_stock_diameter(width: str, wanted: int) -> None:
    made = rod(f"{width} mm")
    assert made.unit == "mm"
    assert line(made, "d_s") == wanted


def test_a_rod_thicker_than_any_in_stock_is_told() -> None:
    made = rod("3-1/4 in")
    assert made.result == pytest.approx(4.0625)
    assert made.secondary_steps == ()
    assert made.notes[0] == "No rod in stock is that thick; the thickest is 4 in."


@given(st.integers(6, 64 * 3), st.integers(0, 100))
def test_no_stock_diameter_lies_between_the_least_and_the_one_that_is_named(width: int, oversize: int) -> None:
    made = rod(f"{mixed(Fraction(width, 64))} in", oversize=f"{oversize}%")
    enough = [size for size in STOCK["in"] if size >= Fraction(width, 64) * (1 + Fraction(oversize, 100))]
    assert [step.value for step in made.secondary_steps] == [pytest.approx(float(size)) for size in enough[:1]]


@given(st.integers(6, 300), st.integers(0, 99))
def test_more_width_or_more_oversize_asks_for_a_thicker_rod(width: int, oversize: int) -> None:
    made = rod(f"{mixed(Fraction(width, 64))} in", oversize=str(oversize)).result
    assert rod(f"{mixed(Fraction(width + 1, 64))} in", oversize=str(oversize)).result > made
    assert rod(f"{mixed(Fraction(width, 64))} in", oversize=f"{oversize + 1}%").result > made


@given(st.integers(6, 300), st.integers(0, 100))
def test_both_unit_systems_agree(width: int, oversize: int) -> None:
    ip, si = (
        rod(f"{mixed(Fraction(width, 64))} in", oversize=f"{oversize}"),
        rod(f"{width * 25.4 / 64:.9f} mm", oversize=f"{oversize}"),
    )
    assert si.result == pytest.approx(ip.result * 25.4)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"width": "0 in"}, "width is 0 in"),
        ({"width": "-1/2 in"}, "width is -1/2 in"),
        ({"oversize": "-5%"}, "oversize is -5 %"),
        ({"oversize": "a quarter"}, "is not a number"),
        ({"width": "1/2"}, "has no unit"),
    ],
)
def test_what_has_no_sense_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        worked("backer-rod", {"width": "3/4 in"} | wrong)


def test_a_joint_of_a_project_takes_its_own_width(tmp_path: Path) -> None:
    made = resolver_of(tmp_path, {"joints": {"J1": {"width": "3/4 in"}}})(("joints", "J1"), "backer-rod")
    assert made.result == pytest.approx(15 / 16)
