"""Cup time from a viscosity: the other direction of the cup formulas."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen import computing
from specgen.computing.arguments import direct
from specgen.computing.coats._cups import CUPS
from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing.coats._cup_rows import MARKS


def seconds(cup: str, viscosity: str, **more: str) -> Working:
    return direct(computing.find("cup-seconds"), {"cup": cup, "viscosity": viscosity} | more)


# Cup, mm²/s, seconds and rounding, source. The figures of the tables read from right to left.
PUBLISHED = [
    ("zahn_2", "38.5 cSt", 25, 0.01, "Patton 1979"),
    ("zahn_4", "444 cSt", 35, 0.01, "Patton 1979"),
    ("zahn_3", "614.2 mm2/s", 60, 0.01, "Patton 1979"),
    ("ford_4", "98.2 mm2/s", 30, 0.02, "ASTM D1200, constants from memory"),
    ("iso_4", "78.9 mm2/s", 60, 0.05, "ISO 2431, from memory"),
    ("iso_5", "325.8 mm2/s", 100, 0.02, "ISO 2431, from memory"),
]


@pytest.mark.parametrize(("cup", "viscosity", "wanted", "rounding", "source"), PUBLISHED)
def test_a_published_viscosity_gives_its_time(
    cup: str, viscosity: str, wanted: float, rounding: float, source: str
) -> None:
    assert seconds(cup, viscosity).result == pytest.approx(wanted, abs=rounding), source


# Oils of known viscosity at 25 C, mm2/s, and the seconds of each cup, printed in the table of those who sell the oils.
OILS = {
    8.9: {"shell_1": 52},
    17: {"zahn_1": 45, "shell_2": 35, "ford_1": 70},
    34: {"zahn_1": 60, "shell_2": 64, "shell_2_5": 40, "ford_2": 42},
    66: {"zahn_2": 33, "shell_2_5": 74, "shell_3": 46, "shell_3_5": 32, "ford_2": 64, "ford_3": 35},
    120: {"zahn_2": 48, "shell_3_5": 57, "shell_4": 36, "ford_3": 58, "ford_4": 36},
    230: {"zahn_3": 27, "zahn_4": 21, "shell_4": 68, "shell_5": 36, "ford_4": 64},
    460: {"zahn_3": 47, "zahn_4": 36, "shell_5": 72, "shell_6": 29, "ford_5": 40},
    850: {"zahn_4": 62, "zahn_5": 37, "shell_6": 53},
    1600: {"zahn_5": 70},
}
READ = [(cup, oil, wanted) for oil, row in OILS.items() for cup, wanted in row.items()]


@pytest.mark.parametrize(("cup", "oil", "wanted"), READ)
def test_an_oil_of_known_viscosity_runs_out_in_the_time_of_the_table(cup: str, oil: float, wanted: int) -> None:
    # The oils are printed to two digits, which moves a cup by up to 0.6 s.
    assert seconds(cup, f"{oil} mm2/s").result == pytest.approx(wanted, abs=0.6)


def test_the_thickest_oil_of_the_table_is_three_percent_off_in_the_largest_ford_cup() -> None:
    # The same table: Ford cup No. 5, 850 mm2/s in 70 s.
    assert seconds("ford_5", "850 mm2/s").result == pytest.approx(70, rel=0.035)


@given(st.sampled_from(MARKS), st.floats(0, 1))
def test_a_time_made_a_viscosity_and_back_is_the_same_time(mark: str, place: float) -> None:
    cup = CUPS[mark]
    time = f"{cup.least + place * (cup.most - cup.least):.12f}"
    there = direct(computing.find("cup-viscosity"), {"cup": mark, "seconds": f"{time} s"})
    assert seconds(mark, f"{there.result:.12f} mm2/s").result == pytest.approx(float(time), rel=1e-9)


@pytest.mark.parametrize("mark", MARKS)
def test_a_viscosity_beyond_the_reach_of_the_cup_is_refused_with_its_range(mark: str) -> None:
    cup = CUPS[mark]
    least, most = cup.viscosity(cup.least), cup.viscosity(cup.most)
    assert seconds(mark, f"{least:.12f} mm2/s").result == pytest.approx(cup.least)
    assert seconds(mark, f"{most:.12f} mm2/s").result == pytest.approx(cup.most)
    for outside in (least * 0.999, most * 1.001):
        with pytest.raises(Refused, match=f"{cup.least} to {cup.most} s"):
            seconds(mark, f"{outside:.9f} mm2/s")


def test_a_time_may_be_asked_for_in_minutes() -> None:
    assert seconds("zahn_4", "814 mm2/s", unit="min").result == pytest.approx(1)


@pytest.mark.parametrize("viscosity", ["0 mm2/s", "-5 mm2/s", "100", "100 s"])
def test_what_is_no_viscosity_is_refused(viscosity: str) -> None:
    with pytest.raises(Refused):
        seconds("zahn_4", viscosity)


def test_a_time_tells_what_must_be_known_with_it() -> None:
    notes = seconds("zahn_4", "296 mm2/s").notes
    assert [note[:11] for note in notes] == ["The formula", "Measured at", "Use one num"]
    assert "cups are not made to a uniform specification" in notes[-1]
