"""One cup in the seconds of another: through the viscosity that both formulas share."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from specgen import computing
from specgen.computing.arguments import direct
from specgen.computing.coats._cups import CUPS
from specgen.model.problem import Refused
from specgen.model.working import Working
from specgen.quantities.two_systems import tell_in
from tests.computing.coats._cup_rows import MARKS


def carried(cup: str, seconds: str, to: str) -> Working:
    return direct(computing.find("cup-to-cup"), {"cup": cup, "seconds": seconds, "to": to})


def value(working: Working, symbol: str) -> float:
    return next(float(step.value) for step in working.steps if step.symbol == symbol)


# Both sides typed from the tables: Patton 1979 for Zahn and Shell, ASTM D1200 for Ford No. 2, from memory for Ford
# No. 4 and ISO (ISO 2431).
@pytest.mark.parametrize(
    ("cup", "time", "to", "wanted"),
    [
        ("zahn_4", 30, "zahn_3", 370 / 11.7 + 7.5),
        ("zahn_2", 30, "ford_2", 56 / 1.44 + 18),
        ("zahn_2", 45, "ford_4", 108.5 / 3.85 + 4.49),
        ("zahn_2", 40, "shell_4", 91 / 3.45 + 1),
        ("iso_4", 60, "zahn_2", (1.37 * 60 - 200 / 60) / 3.5 + 14),
    ],
)
def test_the_same_paint_in_another_cup(cup: str, time: float, to: str, wanted: float) -> None:
    assert carried(cup, f"{time} s", to).result == pytest.approx(wanted)


@given(st.sampled_from(MARKS), st.sampled_from(MARKS), st.floats(0, 1))
def test_carried_there_and_back_a_time_is_the_same_and_else_it_is_refused(mark: str, to: str, place: float) -> None:
    first, second = CUPS[mark], CUPS[to]
    time = first.least + place * (first.most - first.least)
    least, most = second.viscosity(second.least), second.viscosity(second.most)
    viscosity = first.viscosity(time)
    assume(min(abs(viscosity - least), abs(viscosity - most)) > 1e-6)
    if not least < viscosity < most:
        with pytest.raises(Refused, match="outside the range of the cup"):
            carried(mark, f"{time:.12f} s", to)
        return
    there = carried(mark, f"{time:.12f} s", to).result
    assert second.least <= there <= second.most
    assert carried(to, f"{there:.12f} s", mark).result == pytest.approx(time, rel=1e-8)


def test_a_time_outside_the_range_of_the_cup_that_was_read_is_refused() -> None:
    with pytest.raises(Refused, match="Zahn No. 2"):
        carried("zahn_2", "19 s", "ford_4")


@pytest.mark.parametrize(("cup", "to"), [("zahn_2", "ford_4"), ("ford_4", "zahn_2"), ("zahn_2", "zahn_3")])
def test_the_spread_of_a_zahn_cup_lies_on_the_time_of_either(cup: str, to: str) -> None:
    # ASTM D4212: two results may differ by 33 % of their mean.
    made = carried(cup, "60 s", to)
    for symbol in ("t_s", "t_l"):
        other = value(made, symbol)
        assert abs(other - made.result) == pytest.approx(0.33 * (other + made.result) / 2)
    assert made.secondary_results == ("t_s", "t_l")


def test_two_cups_without_a_known_spread_say_so() -> None:
    made = carried("ford_3", "60 s", "iso_5")
    assert made.secondary_results == ()
    assert sum("No figure for the spread" in note for note in made.notes) == 2


def test_two_cups_tell_the_notes_of_both_each_once() -> None:
    # The temperatures of the cups: ASTM D4212 for dip cups; ISO 2431 from memory.
    oils, dip, flow, unknown, keep, first = map(tell_in, carried("zahn_2", "60 s", "iso_5").notes)
    assert oils.startswith("The formula is for oils.")
    assert dip.startswith("Measured at 77 °F (25 °C). Viscosity may fall 5 % for each 1 °F")
    assert flow == "Measured at 73.4 °F (23 °C)."
    assert unknown == "No figure for the spread of the cup ISO 5 mm is known here."
    assert keep.startswith("Use one numbered cup from mockup to last pail")
    # Common practice, no source.
    assert first == "A time carried over from another cup is a first guess; the accepted mockup decides."
    same = carried("zahn_2", "60 s", "zahn_3").notes
    assert [note[:11] for note in same] == ["The formula", "Measured at", "Use one num", "A time carr"]
