"""The quantity of sealant against the usual table of feet per gallon and a general units library."""

import math
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.problem import Refused
from specgen.model.working import Working
from tests.computing._figures import beside, line, resolver_of, worked
from tests.computing.units_library import UNITS
from tests.support import mixed

BEAD = {"length": "100 ft", "width": "3/4 in", "depth": "3/8 in"}


def sealant(**more: str) -> Working:
    return worked("sealant-quantity", BEAD, **more)


# Width, depth, feet of joint from a gallon. The table of the trade, from memory: 308, 205, 154, 102, 77, 68, 51, 38 ft;
# figures are cut, not rounded (102.7 is printed 102, 38.5 is printed 38).
TABLE = [
    ("1/4", "1/4", 308),
    ("3/8", "1/4", 205),
    ("1/2", "1/4", 154),
    ("1/2", "3/8", 102),
    ("1/2", "1/2", 77),
    ("3/4", "3/8", 68),
    ("3/4", "1/2", 51),
    ("1", "1/2", 38),
]


@pytest.mark.parametrize(("width", "depth", "feet"), TABLE)
def test_a_gallon_fills_the_feet_of_the_usual_table(width: str, depth: str, feet: int) -> None:
    keys = {"width": f"{width} in", "depth": f"{depth} in", "waste": "0"}
    assert math.floor(line(sealant(**keys), "Y")) == feet
    # A gallon fills the printed feet and not one more.
    assert sealant(**keys, length=f"{feet} ft").result <= 1 < sealant(**keys, length=f"{feet + 1} ft").result


# Feet from a gallon by 231 cubic inches over the section of the bead: an identity, worked by hand.
@pytest.mark.parametrize(
    ("width", "depth", "feet"),
    [("3/4", "3/8", 68.44), ("5/8", "5/16", 98.56), ("1-1/4", "1/2", 30.8), ("1", "1/2", 38.5)],
)
def test_a_gallon_is_231_cubic_inches(width: str, depth: str, feet: float) -> None:
    made = sealant(width=f"{width} in", depth=f"{depth} in")
    assert beside(made) == {"yield without waste": pytest.approx(feet, abs=0.005)}


def test_cartridges_of_published_calculators() -> None:
    # Web calculators: 1/2 x 1/4 in takes 1.5 cubic inches to the foot, so a cartridge of 10.3 fl oz, 18.6 cubic inches,
    # fills 12.4 ft; 1/4 x 1/4 in about 25 ft.
    keys = {"waste": "0%", "container": "10.3 fl oz", "depth": "1/4 in"}
    assert beside(sealant(**keys, width="1/2 in", length="12.3 ft"))["whole containers"] == 1
    assert beside(sealant(**keys, width="1/2 in", length="12.5 ft"))["whole containers"] == 2
    assert beside(sealant(**keys, width="1/4 in", length="24.7 ft"))["whole containers"] == 1
    assert beside(sealant(**keys, width="1/4 in", length="25 ft"))["whole containers"] == 2


def test_waste_is_added_and_a_percent_sign_changes_nothing() -> None:
    plain = sealant(waste="0").result
    assert sealant().result == pytest.approx(plain * 1.10)
    assert sealant(waste="").result == sealant().result
    assert sealant(waste="15%").result == sealant(waste="15").result == pytest.approx(plain * 1.15)


@pytest.mark.parametrize(
    ("container", "count", "said"),
    [
        ("1 gal", 2, "Whole containers: 2, rounded up from 1.607."),
        ("2 gal", 1, "Whole containers: 1, rounded up from 0.8036."),
        ("20 fl oz", 11, "Whole containers: 11, rounded up from 10.29."),
    ],
)
def test_containers_are_whole_and_the_rounding_is_said(container: str, count: int, said: str) -> None:
    # 100 ft of 3/4 x 3/8 in with 10 % waste: 3712.5 cubic inches, 1.607 gal.
    made = sealant(container=container)
    assert beside(made)["whole containers"] == count
    assert made.notes[0] == said


def test_a_volume_that_fills_its_containers_needs_no_further_one() -> None:
    # 231 cubic inches are a gallon: 77 ft of 1/2 x 1/2 in.
    keys = {"width": "1/2 in", "depth": "1/2 in", "waste": "0", "container": "1/10 gal"}
    made = sealant(**keys, length="77 ft")
    assert beside(made)["whole containers"] == 10
    assert made.notes[0] == "Whole containers: 10, none left over."
    assert beside(sealant(**keys, length="77.1 ft"))["whole containers"] == 11


def test_a_units_library_finds_the_same_volume() -> None:
    bead = 100 * UNITS.ft * 0.75 * UNITS.inch * 0.375 * UNITS.inch
    assert sealant(waste="0").result == pytest.approx(bead.to("US_liquid_gallon").magnitude, rel=1e-12)
    metric = sealant(waste="0", length="30.48 m", width="19.05 mm", depth="9.525 mm")
    assert metric.unit == "L"
    assert metric.result == pytest.approx(bead.to("liter").magnitude, rel=1e-12)
    assert sealant(waste="0", unit="fl oz").result == pytest.approx(bead.to("US_fluid_ounce").magnitude, rel=1e-9)


@given(st.integers(1, 3000), st.integers(4, 64), st.integers(4, 32), st.integers(0, 50))
def test_both_unit_systems_agree(feet: int, width: int, depth: int, waste: int) -> None:
    ip = sealant(
        length=f"{feet} ft",
        width=f"{mixed(Fraction(width, 32))} in",
        depth=f"{mixed(Fraction(depth, 32))} in",
        waste=str(waste),
    )
    metric = {"width": f"{width * 25.4 / 32:.9f} mm", "depth": f"{depth * 25.4 / 32:.9f} mm"}
    si = sealant(length=f"{feet * 0.3048:.6f} m", waste=f"{waste}%", **metric)
    assert si.result == pytest.approx(ip.result * 3.785411784, rel=1e-7)


LARGER = {
    "length": ("50 ft", "51 ft"),
    "width": ("1/2 in", "5/8 in"),
    "depth": ("1/4 in", "3/8 in"),
    "waste": ("5", "6"),
}


@given(st.fixed_dictionaries({key: st.booleans() for key in LARGER}), st.sampled_from(sorted(LARGER)))
def test_more_of_anything_needs_more_sealant(large: dict[str, bool], more: str) -> None:
    keys = {key: LARGER[key][is_large] for key, is_large in large.items()}
    less, greater = (sealant(**keys | {more: LARGER[more][n]}).result for n in (0, 1))
    assert less < greater


@given(st.integers(1, 3000), st.integers(1, 200))
def test_the_containers_hold_the_volume_and_one_less_would_not(feet: int, ounces: int) -> None:
    made = sealant(length=f"{feet} ft", container=f"{ounces} fl oz")
    count, held = beside(made)["whole containers"], made.result * 128 / ounces
    assert count - 1 < held + 1e-6 and held - 1e-6 <= count


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"length": "-1 ft"}, "length is -1 ft"),
        ({"width": "0 in"}, "width is 0 in"),
        ({"width": "-1/4 in"}, "width is -1/4 in"),
        ({"depth": "0 in"}, "depth is 0 in"),
        ({"waste": "-1%"}, "waste is -1 %"),
        ({"container": "0 gal"}, "container is 0 gal"),
        ({"container": "-1 gal"}, "container is -1 gal"),
        ({"container": "20 oz"}, "container"),
        ({"container": "600 mm"}, "not a unit of volume"),
        ({"waste": "some"}, "is not a number"),
    ],
)
def test_what_has_no_sense_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        sealant(**wrong)


def test_a_joint_of_a_project_takes_its_own_figures(tmp_path: Path) -> None:
    joints: dict[str, Any] = {
        "J1": {"length": "100 ft", "width": "3/4 in", "depth": "3/8 in"},
        "J2": {"length": "10 ft"},
    }
    resolve = resolver_of(tmp_path, {"joints": joints})
    made = resolve(("joints", "J1"), "sealant-quantity")
    assert made.result == pytest.approx(sealant().result)
    assert made.secondary_results == ("Y",)
    missing = {path[-1] for path in resolve.missing(("joints", "J2"), "sealant-quantity")}
    assert missing == {"width", "depth"}
