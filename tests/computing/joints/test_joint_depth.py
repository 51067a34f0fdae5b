"""The depth of a bead against the pairs of a textbook."""

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.absence import Absent
from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing._figures import beside, line, resolver_of, worked
from tests.support import mixed


def depth(width: str) -> Working:
    return worked("joint-depth", {"width": width})


# Width, least depth, what governs: the pairs an architectural detailing textbook prints, and its rule between them.
HALF, LEAST, MOST = "half the width", "the least depth of any bead", "the greatest depth of any bead"
PAIRS = [
    ("1/4", "1/4", LEAST, "printed pair"),
    ("3/4", "3/8", HALF, "printed pair"),
    ("1-1/4", "1/2", MOST, "printed pair"),
    ("3/8", "1/4", LEAST, "by the rule"),
    ("1/2", "1/4", HALF, "by the rule, at its corner"),
    ("5/8", "5/16", HALF, "by the rule"),
    ("1", "1/2", HALF, "by the rule, at its corner"),
    ("2", "1/2", MOST, "by the rule"),
]


@pytest.mark.parametrize(("width", "wanted", "governs", "where"), PAIRS)
def test_the_least_depth_of_a_textbook(width: str, wanted: str, governs: str, where: str) -> None:
    made = depth(f"{width} in")
    assert Fraction(made.result) == Fraction(wanted), where
    assert made.governing_case == governs
    assert made.unit == "in"


# ASTM C1193, from memory: up to 1/2 in as deep as wide, up to 1 in half the width, beyond it 3/8 to 1/2 in.
@pytest.mark.parametrize(
    ("width", "wanted"), [("1/4", 0.25), ("3/8", 0.375), ("1/2", 0.5), ("3/4", 0.5), ("1", 0.5), ("2", 0.5)]
)
def test_the_greatest_depth_stands_beside_it(width: str, wanted: float) -> None:
    assert beside(depth(f"{width} in")) == {"maximum depth": wanted}


@given(st.integers(16, 284), st.integers(1, 100))
def test_a_wider_joint_is_never_shallower_and_no_bead_is_deeper_than_wide(width: int, wider: int) -> None:
    one, other = depth(f"{mixed(Fraction(width, 64))} in"), depth(f"{mixed(Fraction(width + wider, 64))} in")
    assert one.result <= other.result
    for made in (one, other):
        assert 0.25 <= made.result <= line(made, "D_g") <= min(0.5, line(made, "D_h") * 2)


@given(st.integers(16, 384))
def test_both_unit_systems_agree(width: int) -> None:
    ip, si = depth(f"{mixed(Fraction(width, 64))} in"), depth(f"{width * 25.4 / 64:.9f} mm")
    assert si.unit == "mm"
    # The textbook prints 6 mm beside 1/4 in and 13 mm beside 1/2 in.
    assert si.result == pytest.approx(min(max(line(ip, "D_h") * 25.4, 6), 13))
    assert line(si, "D_g") == pytest.approx(min(width * 25.4 / 64, 13))


@pytest.mark.parametrize("width", ["3/16 in", "3/32 in", "5.9 mm"])
def test_a_joint_narrower_than_a_quarter_inch_is_refused(width: str) -> None:
    # 1/4 in (6 mm) is the least width of the textbook.
    with pytest.raises(Refused, match=r"width is .* wide or more"):
        depth(width)


def test_a_joint_too_wide_for_one_bead_is_told() -> None:
    # 2 in at most: the same textbook.
    assert "Maximum width of one bead: 2 in." in depth("2-1/8 in").notes
    assert not [note for note in depth("2 in").notes if "One bead" in note]


def test_a_joint_of_a_project_takes_its_own_width(tmp_path: Path) -> None:
    resolve = resolver_of(tmp_path, {"joints": {"J1": {"width": "3/4 in"}, "J2": {"depth": "1/4 in"}}})
    assert resolve(("joints", "J1"), "joint-depth").result == 0.375
    assert [".".join(path) for path in resolve.missing(("joints", "J2"), "joint-depth")] == ["joints.J2.width"]
    with pytest.raises(Absent):
        resolve(("joints", "J2"), "joint-depth")


def test_a_metric_project_reads_millimeters(tmp_path: Path) -> None:
    change = {"package": {"units": "si"}, "joints": {"J1": {"width": "20 mm"}}}
    made = resolver_of(tmp_path, change)(("joints", "J1"), "joint-depth")
    assert (made.result, made.unit) == (10, "mm")
