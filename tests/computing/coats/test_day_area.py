"""The area of a day: solved from the hours that an area takes, and checked by putting it back into them."""

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.absence import Absent
from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing._figures import beside, line, resolver_of, worked
from tests.support import merged


def day(rate: str = "300 sq ft/h", touch_dry: str = "1 h", hours: str = "4 h", **more: str) -> Working:
    return worked("day-area", {"rate": rate, "touch_dry": touch_dry, "hours": hours}, **more)


def hours_of(area: float, rate: float, touch_dry: float) -> float:
    """The hours of an area with two coats: the second starts when the first is done and is dry to touch."""
    return max(area / rate, touch_dry) + area / rate


# Output, touch-dry, hours, area: max(A / r, touch-dry) + A / r put equal to the hours, by hand. The two coats are
# common practice, no source; 600 sq ft in 4 h is worked out from the stated formula.
BY_HAND = [
    ("300 sq ft/h", "1 h", "4 h", 600, "spraying"),
    ("300 sq ft/h", "1 h", "2 h", 300, "spraying"),
    ("300 sq ft/h", "1 h", "1.5 h", 150, "drying of the first coat"),
    ("300 sq ft/h", "60 min", "90 min", 150, "drying of the first coat"),
    ("300 sq ft/h", "0.1 h", "4 h", 600, "spraying"),
    ("300 sq ft/h", "4 h", "4 h", 0, "drying of the first coat"),
    ("300 sq ft/h", "5 h", "4 h", 0, "drying of the first coat"),
    ("30 m2/h", "3 h", "5 h", 60, "drying of the first coat"),
]


@pytest.mark.parametrize(("rate", "touch_dry", "hours", "wanted", "governs"), BY_HAND)
def test_days_worked_by_hand(rate: str, touch_dry: str, hours: str, wanted: float, governs: str) -> None:
    made = day(rate, touch_dry, hours)
    assert made.result == pytest.approx(wanted)
    assert made.governing_case == governs
    assert made.unit == ("ft2" if "ft" in rate else "m2")


@given(st.integers(1, 1000), st.integers(1, 48), st.integers(0, 96))
def test_the_area_fills_its_hours_and_one_foot_more_would_not_fit(rate: int, dry: int, hours: int) -> None:
    made = day(f"{rate} sq ft/h", f"{dry / 4} h", f"{hours / 4} h")
    if hours > dry:
        assert made.result > 0
        assert hours_of(made.result, rate, dry / 4) == pytest.approx(hours / 4)
    else:
        assert made.result == 0
        assert hours_of(0, rate, dry / 4) >= hours / 4
    assert hours_of(made.result + 1, rate, dry / 4) > hours / 4


@given(st.integers(1, 1000), st.integers(1, 48), st.integers(0, 95))
def test_more_hours_and_output_give_no_less_area_and_longer_drying_no_more(rate: int, dry: int, hours: int) -> None:
    made = day(f"{rate} sq ft/h", f"{dry / 4} h", f"{hours / 4} h").result
    assert day(f"{rate} sq ft/h", f"{dry / 4} h", f"{(hours + 1) / 4} h").result >= made
    assert day(f"{rate + 1} sq ft/h", f"{dry / 4} h", f"{hours / 4} h").result >= made
    assert day(f"{rate} sq ft/h", f"{(dry + 1) / 4} h", f"{hours / 4} h").result <= made


@given(st.integers(1, 1000), st.integers(1, 48), st.integers(0, 96))
def test_both_unit_systems_agree(rate: int, dry: int, hours: int) -> None:
    ip = day(f"{rate} sq ft/h", f"{dry / 4} h", f"{hours / 4} h")
    si = day(f"{rate * 0.09290304:.9f} m2/h", f"{15 * dry} min", f"{hours / 4}")
    assert si.result == pytest.approx(ip.result * 0.09290304, rel=1e-6)


def test_the_hours_of_each_pass_stand_beside_the_area() -> None:
    assert beside(day()) == {"hours per pass": 2, "second pass start": 2, "wait between passes": 0}
    short = day(touch_dry="2 h", hours="3 h")
    assert beside(short) == {"hours per pass": 1, "second pass start": 2, "wait between passes": 1}
    assert line(short, "H_2") + line(short, "H_1") == 3


def test_a_day_too_short_for_drying_says_so() -> None:
    assert "no second coat the same day" in day(touch_dry="5 h").notes[0]
    assert not any("no second coat" in note for note in day().notes)


@pytest.mark.parametrize(("bare", "full"), [("4", "4 h"), ("1.5", "90 min"), ("3/4", "45 min")])
def test_a_bare_number_is_hours(bare: str, full: str) -> None:
    assert day(hours=bare).result == pytest.approx(day(hours=full).result)
    assert day(touch_dry=bare).result == pytest.approx(day(touch_dry=full).result)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"rate": "0 sq ft/h"}, "rate is 0 sq ft/h"),
        ({"rate": "-300 sq ft/h"}, "rate is -300"),
        ({"rate": "300"}, "has no unit"),
        ({"touch_dry": "-1 h"}, "touch_dry is -1 h"),
        ({"hours": "-4 h"}, "hours is -4 h"),
        ({"hours": "-4"}, "hours is -4 h"),
        ({"hours": "long"}, "is not a quantity"),
        ({"hours": "4 ft"}, "not a unit of time"),
        ({"hours": "1/0"}, "divides by zero"),
    ],
)
def test_what_has_no_sense_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        worked("day-area", {"rate": "300 sq ft/h", "touch_dry": "1 h", "hours": "4 h"} | wrong)


PROJECT: dict[str, Any] = {
    "schedule": {"shift_hours": 9},
    "crews": {"K1": {"steps": ["gloss"], "rates": {"gloss": "300 sq ft/h"}}},
    "elevations": {"E1": {"wall": "W1"}},
    "coating": {"gloss": {"touch_dry_hours": 1}},
}


def area(folder: Path, change: dict[str, Any]) -> Working:
    made = resolver_of(folder, merged(PROJECT, change))(("elevations", "E1"), "day-area")
    assert isinstance(made, Working)
    return made


def test_an_elevation_takes_the_shift_less_two_hours(tmp_path: Path) -> None:
    # One hour for setting up and cleaning, and one for both between the coats: common practice, no source.
    assert area(tmp_path, {}).result == pytest.approx(300 * 7 / 2)


def test_of_several_gloss_crews_the_slowest_counts(tmp_path: Path) -> None:
    crews = {
        "K2": {"steps": ["gloss"], "rates": {"gloss": "200 sq ft/h"}},
        "K3": {"steps": ["primer"], "rates": {"primer": "100 sq ft/h"}},
    }
    made = area(tmp_path, {"crews": crews})
    assert made.result == pytest.approx(200 * 7 / 2)
    assert "The spray rate is that of crew K2." in made.notes


# Setting up and cleaning need no shade: 5 h of it are 4 h of spraying, the hour between the coats taken off.
SHADE = [{"month": "jun", "from": "07:00", "to": "12:00"}, {"month": "jul", "from": "07:00", "to": "13:30"}]


@pytest.mark.parametrize(("kind", "hours"), [(None, 4), ("natural", 4), ("none", 4), ("shade_cloth", 7), ("tent", 7)])
def test_own_shade_bounds_the_day_unless_the_wall_is_covered(kind: str | None, hours: int, tmp_path: Path) -> None:
    change: dict[str, Any] = {"elevations": {"E1": {"shade_hours": SHADE}}}
    if kind:
        change["shade"] = {"S1": {"elevation": "E1", "kind": kind}}
    assert area(tmp_path, change).result == pytest.approx(300 * hours / 2)


def test_two_spells_of_shade_in_a_month_count_together(tmp_path: Path) -> None:
    spells = [{"month": "jun", "from": "06:00", "to": "09:00"}, {"month": "jun", "from": "17:00", "to": "20:00"}]
    assert area(tmp_path, {"elevations": {"E1": {"shade_hours": spells}}}).result == pytest.approx(300 * 5 / 2)


def test_a_number_of_coats_other_than_two_is_told(tmp_path: Path) -> None:
    assert not any("sum is for two coats" in note for note in area(tmp_path, {}).notes)
    made = area(tmp_path, {"coating": {"gloss": {"touch_dry_hours": 1, "coats": 3}}})
    assert "Calculated for two coats; number of coats in this project: 3." in made.notes


@pytest.mark.parametrize(
    ("change", "path"),
    [
        ({"schedule": "drop"}, "schedule.shift_hours"),
        ({"crews": "drop"}, "crews"),
        ({"crews": {"K1": "drop"}}, "crews"),
        ({"crews": {"K1": {"rates": "drop"}}}, "crews.K1.rates.gloss"),
        ({"coating": {"gloss": {"touch_dry_hours": "drop", "coats": 2}}}, "gloss.touch_dry_hours"),
    ],
)
def test_what_is_missing_is_told_by_path(change: dict[str, Any], path: str, tmp_path: Path) -> None:
    with pytest.raises(Absent) as raised:
        area(tmp_path, change)
    assert str(raised.value) == path
