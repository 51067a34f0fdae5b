"""The color difference against the table of its authors and a general color library."""

import itertools
import math

import pytest
from coloraide import Color
from hypothesis import assume, given
from hypothesis import strategies as st

from specgen import computing
from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing._figures import beside, worked


def difference(lab1: str, lab2: str, **more: str) -> Working:
    return worked("colour-difference", {"lab1": lab1, "lab2": lab2}, **more)


# Sharma, Wu and Dalal, The CIEDE2000 Color-Difference Formula, 2005, table 1: pairs of colors and their difference.
TABLE = """
50 2.6772 -79.7751 | 50 0 -82.7485 | 2.0425
50 3.1571 -77.2803 | 50 0 -82.7485 | 2.8615
50 2.8361 -74.0200 | 50 0 -82.7485 | 3.4412
50 -1.3802 -84.2814 | 50 0 -82.7485 | 1.0000
50 -1.1848 -84.8006 | 50 0 -82.7485 | 1.0000
50 -0.9009 -85.5211 | 50 0 -82.7485 | 1.0000
50 0 0 | 50 -1 2 | 2.3669
50 -1 2 | 50 0 0 | 2.3669
50 2.49 -0.0010 | 50 -2.49 0.0009 | 7.1792
50 2.49 -0.0010 | 50 -2.49 0.0010 | 7.1792
50 2.49 -0.0010 | 50 -2.49 0.0011 | 7.2195
50 2.49 -0.0010 | 50 -2.49 0.0012 | 7.2195
50 -0.0010 2.49 | 50 0.0009 -2.49 | 4.8045
50 -0.0010 2.49 | 50 0.0010 -2.49 | 4.8045
50 -0.0010 2.49 | 50 0.0011 -2.49 | 4.7461
50 2.5 0 | 50 0 -2.5 | 4.3065
50 2.5 0 | 73 25 -18 | 27.1492
50 2.5 0 | 61 -5 29 | 22.8977
50 2.5 0 | 56 -27 -3 | 31.9030
50 2.5 0 | 58 24 15 | 19.4535
50 2.5 0 | 50 3.1736 0.5854 | 1.0000
50 2.5 0 | 50 3.2972 0 | 1.0000
50 2.5 0 | 50 1.8634 0.5757 | 1.0000
50 2.5 0 | 50 3.2592 0.3350 | 1.0000
60.2574 -34.0099 36.2677 | 60.4626 -34.1751 39.4387 | 1.2644
63.0109 -31.0961 -5.8663 | 62.8187 -29.7946 -4.0864 | 1.2630
61.2901 3.7196 -5.3901 | 61.4292 2.2480 -4.9620 | 1.8731
35.0831 -44.1164 3.7933 | 35.0232 -40.0716 1.5901 | 1.8645
22.7233 20.0904 -46.6940 | 23.0331 14.9730 -42.5619 | 2.0373
36.4612 47.8580 18.3852 | 36.2715 50.5065 21.2231 | 1.4146
90.8027 -2.0831 1.4410 | 91.1528 -1.6435 0.0447 | 1.4441
90.9257 -0.5406 -0.9208 | 88.6381 -0.8985 -0.7239 | 1.5381
6.7747 -0.2908 -2.4247 | 5.8714 -0.0985 -2.2286 | 0.6377
2.0776 0.0795 -1.1350 | 0.9033 -0.0636 -0.5514 | 0.9082
"""
PAIRS = [tuple(part.strip() for part in row.split("|")) for row in TABLE.strip().splitlines()]


def test_the_table_is_whole() -> None:
    assert len(PAIRS) == 34


@pytest.mark.parametrize(("lab1", "lab2", "wanted"), PAIRS)
def test_the_pairs_of_the_published_table_both_ways(lab1: str, lab2: str, wanted: str) -> None:
    one, other = lab1.replace(" ", ","), lab2.replace(" ", ",")
    assert difference(one, other).result == pytest.approx(float(wanted), abs=5.1e-5)
    assert difference(other, one).result == pytest.approx(float(wanted), abs=5.1e-5)


def lab(color: tuple[float, ...]) -> str:
    return ",".join(f"{value:g}" for value in color)


def of_the_library(one: tuple[float, ...], other: tuple[float, ...], method: str) -> float:
    return float(Color("lab-d65", one).delta_e(Color("lab-d65", other), method=method, space="lab-d65"))


# A grid with grays, both signs of both axes, the blues where the formula turns, and opposite hues.
GRID = [(light, a, b) for light in (5, 50, 95) for a, b in itertools.product((-60, -2, 0, 3, 45), (-80, -1, 0, 2, 70))]


@pytest.mark.parametrize(("method", "name"), [("2000", "2000"), ("1976", "76")])
@pytest.mark.no_cover
def test_a_general_color_library_finds_the_same_over_a_grid(method: str, name: str) -> None:
    for one in GRID[::3]:
        for other in GRID[::2]:
            made = difference(lab(one), lab(other), method=method).result
            assert made == pytest.approx(of_the_library(one, other, name), abs=1e-9), (one, other)


COLORS = st.tuples(
    st.integers(0, 1000).map(lambda n: n / 10),
    st.integers(-1200, 1200).map(lambda n: n / 10),
    st.integers(-1200, 1200).map(lambda n: n / 10),
)


@given(COLORS, COLORS)
def test_a_general_color_library_finds_the_same_for_any_two_colors(
    one: tuple[float, ...], other: tuple[float, ...]
) -> None:
    # Between hues that lie opposite the formula leaps, and the last bit of a float may send a library either way.
    assume(abs(one[1] * other[2] - one[2] * other[1]) > 1e-6 or one[1] * other[1] + one[2] * other[2] >= 0)
    made = difference(lab(one), lab(other)).result
    assert made == pytest.approx(of_the_library(one, other, "2000"), abs=1e-7)


@given(COLORS, COLORS, st.sampled_from(["2000", "1976"]))
def test_a_difference_is_the_same_both_ways_and_none_from_a_color_to_itself(
    one: tuple[float, ...], other: tuple[float, ...], method: str
) -> None:
    made = difference(lab(one), lab(other), method=method).result
    assert made == pytest.approx(difference(lab(other), lab(one), method=method).result, abs=1e-7)
    assert difference(lab(one), lab(one), method=method).result == 0
    assert made > 0 or one == other


def test_the_distance_of_1976_is_that_of_a_box() -> None:
    # Pythagoras: edges 2, 3 and 6 have a diagonal of 7.
    made = difference("50,0,0", "52,3,-6", method="1976")
    assert made.result == pytest.approx(7)
    assert beside(made) == {"difference of L*": 2, "difference of a*": 3, "difference of b*": -6}


def test_lightness_chroma_and_hue_stand_beside_the_difference() -> None:
    made = difference("50,30,40", "60,30,40")
    assert list(beside(made).values()) == pytest.approx([10, 0, 0])
    # Middle lightness 55: weight 1 + 0.015 x 25 / sqrt(45), by hand from the published formula.
    assert made.result == pytest.approx(10 / (1 + 0.015 * 25 / math.sqrt(45)))


@pytest.mark.parametrize("text", ["50,2.5,-3.1", " 50 , 2.5 , -3.1 ", "50 2.5 -3.1", "50;2.5;-3.1", "50,2.5,\u22123.1"])
def test_a_color_is_read_in_the_usual_ways(text: str) -> None:
    assert difference(text, "50,0,0") == difference("50,2.5,-3.1", "50,0,0")


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"lab1": "50,2.5"}, "is no color"),
        ({"lab1": "50,2.5,0,1"}, "is no color"),
        ({"lab1": "50,red,0"}, "is no color"),
        ({"lab1": "50,,0"}, "is no color"),
        ({"lab1": "50,nan,0"}, "is no color"),
        ({"lab1": "1_2,1,0"}, "is no color"),
        ({"lab1": ""}, "lab1 must be given"),
        ({"lab1": "101,0,0"}, "L of lab1 is 101"),
        ({"lab2": "-1,0,0"}, "L of lab2 is -1"),
        ({"lab2": "50,201,0"}, "a of lab2 is 201"),
        ({"lab2": "50,0,-201"}, "b of lab2 is -201"),
        ({"method": "1994"}, "'1994' is not a choice"),
        ({"unit": "in"}, "cannot be given in 'in'"),
    ],
)
def test_what_is_no_color_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        worked("colour-difference", {"lab1": "50,0,0", "lab2": "50,0,0"} | wrong)


def test_the_american_spelling_finds_it_too() -> None:
    assert computing.find("color-difference") is computing.find("colour-difference")


def test_what_one_angle_cannot_judge_is_noted() -> None:
    # Instruments and finish standards warn that one angle does not judge flake finishes; ASTM E2194, from memory.
    assert any("flake" in note for note in difference("50,0,0", "51,0,0").notes)
