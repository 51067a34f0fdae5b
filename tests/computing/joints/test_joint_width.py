"""The width of a sealant joint against published cases, and shear against the geometry of the bead."""

import math
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen import computing, pipeline
from specgen.computing.arguments import direct
from specgen.computing.joints.joint_width import CLASSES
from specgen.model.problem import Refused
from specgen.model.source import Kind
from specgen.model.working import Working
from tests.support import case_of, mixed

# Cornell University, ARCH 262, sealant joint assignment, fall 2007: a panel of clay brick, checked both ways.
CORNELL = {
    "length": "30 ft",
    "alpha": "3.6e-6 /F",
    "movement_class": "50",
    "tolerance": "1/8 in",
    "hot": "105 F",
    "cold": "-15 F",
    "install_low": "60 F",
    "install_high": "75 F",
    "moisture_strain": "0.0002",
    "structural_closing": "1/4 in",
    "structural_opening": "1/4 in",
}
# The same in meters and degrees C, converted by 1 in = 25.4 mm and 9 F = 5 C.
CORNELL_SI = {
    "length": "9.144 m",
    "alpha": "6.48e-6 /C",
    "movement_class": "50",
    "tolerance": "3.175 mm",
    "hot": "40.55555556 C",
    "cold": "-26.11111111 C",
    "install_low": "15.55555556 C",
    "install_high": "23.88888889 C",
    "moisture_strain": "0.0002",
    "structural_closing": "6.35 mm",
    "structural_opening": "6.35 mm",
}
# A stretch of our own, with one temperature range for both directions.
RANGE = {
    "length": "20 ft",
    "alpha": "8e-6 /F",
    "movement_class": "25",
    "tolerance": "0 in",
    "temperature_range": "100 F",
    "round_up": "none",
}


def width(keys: dict[str, str], **more: str) -> Working:
    return direct(computing.find("joint-width"), keys | more)


def value(working: Working, symbol: str) -> float:
    return next(float(step.value) for step in working.steps if step.symbol == symbol)


# Symbol, value, the line of the assignment. Its totals are sums of parts rounded to four places, so they
# lie within one unit of the fourth place, and within two once they are doubled.
PUBLISHED = [
    ("dT_c", 45, 0, "105 F less 60 F"),
    ("dT_o", 90, 0, "75 F and 15 F below zero"),
    ("D_c", 0.3803, 1e-4, "joint closes: 0.0583 thermal, 0.072 moisture, 0.25 structural"),
    ("D_o", 0.3666, 1e-4, "joint opens: 0.1166 thermal, 0.25 structural"),
    ("W_c", 0.7607, 2e-4, "closing times 100/50"),
    ("W_o", 0.7332, 2e-4, "opening times 100/50"),
    ("W", 0.8857, 2e-4, "closing with the tolerance of 1/8 in"),
]


@pytest.mark.parametrize(("symbol", "wanted", "apart", "line"), PUBLISHED)
def test_the_two_sided_check_of_a_published_assignment(symbol: str, wanted: float, apart: float, line: str) -> None:
    assert value(width(CORNELL), symbol) == pytest.approx(wanted, abs=apart or 1e-9), line


# Cornell University, ARCH 262, sealant joint assignment, fall 2002: clay brick 20 ft wide, -10 to 85 F, moisture
# 0.0002, drift and tolerance 1/8 in each, a sealant of 50 percent. It prints the formula and no answer: the width is
# worked by hand from it, 2 (0.08208 + 0.048 + 0.125) + 0.125.
CORNELL_2002 = {
    "length": "20 ft",
    "alpha": "3.6e-6 /F",
    "movement_class": "50",
    "tolerance": "1/8 in",
    "temperature_range": "95 F",
    "moisture_strain": "0.0002",
    "structural_closing": "1/8 in",
    "structural_opening": "1/8 in",
}
# Architectural Detailing, textbook, sealant joints (public reprint): 288 in of brick over 180 F, growth 0.06 in,
# tolerance 1/8 in. Its sealant and its answer are not legible: worked by hand for classes 25 and 50.
TEXTBOOK = {
    "length": "288 in",
    "alpha": "3.6e-6 /F",
    "tolerance": "1/8 in",
    "temperature_range": "180 F",
    "structural_closing": "0.06 in",
    "round_up": "none",
}


def test_another_year_of_the_assignment_worked_by_hand() -> None:
    assert width(CORNELL_2002, round_up="none").result == pytest.approx(0.63516)
    # The assignment asks for steps of 1/8 in.
    assert width(CORNELL_2002, round_up="1/8 in").result == 3 / 4


@pytest.mark.parametrize(("movement_class", "wanted"), [("25", 1.1115), ("50", 0.6182)])
def test_the_joint_of_a_textbook_worked_by_hand(movement_class: str, wanted: float) -> None:
    assert width(TEXTBOOK, movement_class=movement_class).result == pytest.approx(wanted, abs=5e-5)


# UFGS 07920, page 6: class 12.5 and class 25 withstand that percentage of the width either way; the number of another
# class is read the same way, and which of two numbers is the extension is recalled.
@pytest.mark.parametrize(("movement_class", "percent"), [("12.5", 12.5), ("25", 25), ("35", 35), ("50", 50)])
def test_the_classes_that_a_guide_specification_tells(movement_class: str, percent: float) -> None:
    made = width(RANGE, movement_class=movement_class)
    rows = {row.symbol: row for row in made.inputs if row.symbol in ("S_e", "S_c")}
    assert {100 * row.value for row in rows.values()} == {percent}
    assert {row.source.reference.partition(":")[0] for row in rows.values() if row.source} == {"UFGS 07920, page 6"}
    recalled = next(row.source for row in width(RANGE, movement_class="100/50").inputs if row.symbol == "S_e")
    assert recalled is not None and recalled.kind is Kind.MEMORY


def test_a_joint_is_rounded_up_where_the_assignment_rounds_to_the_nearest() -> None:
    # The assignment prints 7/8 in, the nearest eighth; a joint narrower than its sum is too narrow.
    assert width(CORNELL).result == 15 / 16
    assert width(CORNELL, round_up="1/8 in").result == 1
    assert width(CORNELL, round_up="none").result == pytest.approx(0.8857, abs=2e-4)
    assert width(CORNELL).governing_case == "closing"


# Joint, class, strain as expansion over 100 F and moisture, spacing printed, its rounding, and where.
SPACINGS = [
    (
        Fraction(3, 8),
        "50",
        "0.0005",
        208,
        0.5,
        "Conspectus, Brick Movement Joints, January 2011: 0.0005 + 4e-6 x 100 F, 17 ft 4 in",
    ),
    (Fraction(1, 2), "50", "0.0005", 278, 0.5, "BIA Technical Note 18A, S_e = w e / 0.09, from memory"),
]


@pytest.mark.parametrize(("joint", "movement_class", "moisture", "spacing", "rounding", "where"), SPACINGS)
def test_the_spacing_of_published_brick_joints(
    joint: Fraction, movement_class: str, moisture: str, spacing: float, rounding: float, where: str
) -> None:
    # 4e-6 /F over 100 F and 0.0005 of moisture are the strain of 0.0009 in both. The spacing is solved from the sum:
    # a width grows with the length, so that of the printed spacing lies within its rounding of the joint.
    keys = RANGE | {"alpha": "4e-6 /F", "movement_class": movement_class, "moisture_strain": moisture}
    narrow = width(keys, length=f"{spacing - rounding} in").result
    wide = width(keys, length=f"{spacing + rounding} in").result
    assert narrow < joint < wide, where


def test_the_spacing_form_of_the_brick_industry_is_this_sum_turned_round() -> None:
    # S_e = w e / 0.09 with e in percent; BIA Technical Note 18A, from memory.
    for joint, percent, movement_class in ((0.375, 25, "25"), (0.5, 50, "50"), (0.75, 35, "35")):
        spacing = joint * percent / 0.09
        keys = RANGE | {"alpha": "4e-6 /F", "movement_class": movement_class, "moisture_strain": "0.0005"}
        assert width(keys, length=f"{spacing:.9f} in").result == pytest.approx(joint, rel=1e-8)


def stretched_to_its_class(opening: float, shear: float, extension: float) -> float:
    """The width at which the diagonal of the moved bead is 1 + extension times the bead; by halving."""
    low, high = 1e-9, 1e4
    for _ in range(200):
        middle = (low + high) / 2
        too_far = math.hypot(middle + opening, shear) > (1 + extension) * middle
        low, high = (middle, high) if too_far else (low, middle)
    return high


@pytest.mark.parametrize("movement_class", CLASSES)
@pytest.mark.parametrize(
    ("opening", "shear"), [("0", "1/4"), ("0", "1"), ("1/8", "1/4"), ("1/4", "1/16"), ("1/2", "1/2"), ("1/16", "2")]
)
def test_shear_and_extension_stretch_the_diagonal_of_the_bead_to_its_class(
    movement_class: str, opening: str, shear: str
) -> None:
    moved = {"structural_opening": f"{opening} in", "structural_shear": f"{shear} in"}
    made = width(RANGE, movement_class=movement_class, temperature_range="0 F", **moved)
    wanted = stretched_to_its_class(float(Fraction(opening)), float(Fraction(shear)), CLASSES[movement_class][0])
    assert value(made, "W_o") == pytest.approx(wanted, rel=1e-9)


def test_pure_shear_is_the_side_of_a_right_triangle() -> None:
    # W = d / sqrt(2 S + S^2), Pythagoras: a bead of 1 that slides 0.75 has a diagonal of 1.25, class 25.
    assert value(width(RANGE, temperature_range="0 F", structural_shear="0.75 in"), "W_o") == pytest.approx(1)


def test_shear_so_small_that_it_is_none_leaves_the_plain_sum() -> None:
    plain = width(RANGE, structural_opening="1/4 in")
    assert width(RANGE, structural_opening="1/4 in", structural_shear="1e-9 in").result == pytest.approx(plain.result)


# Class and the share of the width it may extend and be compressed: ASTM C920, from memory.
@pytest.mark.parametrize(
    ("movement_class", "extend", "compress"),
    [
        ("12.5", "1/8", "1/8"),
        ("25", "1/4", "1/4"),
        ("35", "7/20", "7/20"),
        ("50", "1/2", "1/2"),
        ("100/50", "1", "1/2"),
    ],
)
def test_a_class_bears_its_share_of_the_width(movement_class: str, extend: str, compress: str) -> None:
    made = width(RANGE, movement_class=movement_class)
    # 20 ft of 8e-6 /F over 100 F move 0.192 in.
    assert value(made, "W_o") == pytest.approx(float(Fraction("0.192") / Fraction(extend)))
    assert value(made, "W_c") == pytest.approx(float(Fraction("0.192") / Fraction(compress)))


def test_every_class_has_a_row_above() -> None:
    assert set(CLASSES) == {"12.5", "25", "35", "50", "100/50"}


def test_no_movement_needs_the_tolerance_alone() -> None:
    assert width(RANGE, temperature_range="0 F", tolerance="1/8 in").result == 1 / 8
    assert width(RANGE, temperature_range="0 F", tolerance="0 in").result == 0


def test_a_wall_that_is_sealed_in_greater_heat_than_it_meets_later_never_closes() -> None:
    made = width(CORNELL, hot="50 F", moisture_strain="0", structural_closing="0 in")
    assert value(made, "D_c") == 0
    assert made.governing_case == "opening"


@pytest.mark.parametrize(
    ("moved", "governs"),
    [
        ({"structural_opening": "1 in"}, "opening"),
        ({"structural_closing": "1 in"}, "closing"),
        ({"moisture_strain": "0.001"}, "closing"),
        ({"structural_shear": "1 in"}, "opening with shear"),
        ({"structural_shear": "1/64 in", "structural_closing": "1 in"}, "closing"),
    ],
)
def test_what_governs_is_named(moved: dict[str, str], governs: str) -> None:
    made = width(RANGE, **moved)
    assert made.governing_case == governs
    assert made.result == max(value(made, "W_c"), value(made, "W_o"))


def test_both_unit_systems_agree() -> None:
    metric, inches = width(CORNELL_SI, round_up="none"), width(CORNELL, round_up="none")
    assert (metric.unit, inches.unit) == ("mm", "in")
    assert metric.result / 25.4 == pytest.approx(inches.result, rel=1e-7)
    assert metric.governing_case == inches.governing_case
    for ours, theirs in zip(metric.steps, inches.steps, strict=True):
        per = {"in": 25.4, "F": 5 / 9}.get(theirs.unit, 1.0)
        assert ours.value == pytest.approx(theirs.value * per, rel=1e-7), ours.symbol


def test_a_width_is_given_in_the_unit_asked_for() -> None:
    made = width(CORNELL, unit="mm")
    assert made.unit == "mm"
    assert made.result == pytest.approx(15 / 16 * 25.4)
    assert made.steps == width(CORNELL).steps
    assert made.notes[-1] == "The result is given in mm, the steps in inches."
    assert width(CORNELL, unit="in") == width(CORNELL)
    assert width(CORNELL_SI, round_up="1 mm", unit="in").result == pytest.approx(23 / 25.4)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"movement_class": "60"}, "60"),
        ({"movement_class": ""}, "movement class"),
        ({"length": "-1 ft"}, "length is -1 ft"),
        ({"length": "30"}, "has no unit"),
        ({"length": "30 psi"}, "not a unit of length"),
        ({"tolerance": "-1/8 in"}, "tolerance"),
        ({"alpha": "-1e-6 /F"}, "alpha"),
        ({"structural_shear": "-1 in"}, "structural_shear"),
        ({"structural_opening": "-1 in"}, "structural_opening"),
        ({"structural_closing": "-1 in"}, "structural_closing"),
        ({"hot": "-50 F"}, "hot temperature lies below its cold one"),
        ({"install_low": "80 F"}, "hot temperature lies below its cold one"),
        ({"moisture_strain": "-1"}, "moisture_strain"),
        ({"moisture_strain": "damp"}, "is not a number"),
        ({"moisture_strain": "-1/2"}, "moisture_strain is -0.5 .it lies from 0 to 0.005"),
        ({"round_up": "-1 in"}, "round_up is -1 in .it lies from 1/64 in to 1 in"),
        ({"round_up": "0 in"}, "round_up is 0 in"),
        ({"moisture_strain": "-1/0"}, "divides by zero"),
        ({"temperature_range": "100 F"}, "both temperature_range and single temperatures"),
        ({"hot": ""}, "hot must be given"),
        ({"hot": "", "cold": ""}, "hot, cold must be given"),
        ({"unit": "psi"}, "cannot be given in 'psi'"),
        ({"widht": "1 in"}, "'widht' is not a key"),
    ],
)
def test_what_has_no_sense_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        width(CORNELL, **wrong)


def test_all_faults_of_a_request_are_told_at_once() -> None:
    with pytest.raises(Refused) as raised:
        direct(computing.find("joint-width"), {"lenght": "1 ft", "alpha": "8e-6", "tolerance": "1 kg"})
    told = " ".join(str(problem) for problem in raised.value.problems)
    for word in (
        "did you mean length?",
        "length must be given",
        "movement_class must be given",
        "alpha:",
        "tolerance:",
    ):
        assert word in told


AMOUNTS = {
    "length": st.integers(1, 400).map(lambda n: (f"{n} ft", f"{n + 1} ft")),
    "temperature_range": st.integers(0, 200).map(lambda n: (f"{n} F", f"{n + 1} F")),
    "alpha": st.integers(1, 40).map(lambda n: (f"{n}e-6 /F", f"{n + 1}e-6 /F")),
    "tolerance": st.integers(0, 15).map(lambda n: (f"{mixed(Fraction(n, 16))} in", f"{mixed(Fraction(n + 1, 16))} in")),
    "moisture_strain": st.integers(0, 10).map(lambda n: (f"{n}e-4", f"{n + 1}e-4")),
    "structural_closing": st.integers(0, 32).map(
        lambda n: (f"{mixed(Fraction(n, 16))} in", f"{mixed(Fraction(n + 1, 16))} in")
    ),
    "structural_opening": st.integers(0, 32).map(
        lambda n: (f"{mixed(Fraction(n, 16))} in", f"{mixed(Fraction(n + 1, 16))} in")
    ),
    "structural_shear": st.integers(0, 32).map(
        lambda n: (f"{mixed(Fraction(n, 16))} in", f"{mixed(Fraction(n + 1, 16))} in")
    ),
}


@given(st.fixed_dictionaries(AMOUNTS), st.sampled_from(sorted(AMOUNTS)), st.sampled_from(sorted(CLASSES)), st.data())
def test_more_of_anything_never_needs_less_width(
    pairs: dict[str, tuple[str, str]], more: str, movement_class: str, data: Any
) -> None:
    keys = {key: low for key, (low, _) in pairs.items()} | {"movement_class": movement_class, "round_up": "none"}
    assert width(keys, **{more: pairs[more][1]}).result >= width(keys).result - 1e-12


@given(st.fixed_dictionaries(AMOUNTS), st.integers(1, 16))
def test_a_width_is_rounded_up_by_less_than_one_step_to_a_multiple_of_it(
    pairs: dict[str, tuple[str, str]], sixteenths: int
) -> None:
    keys = {key: low for key, (low, _) in pairs.items()} | {"movement_class": "25"}
    step = sixteenths / 16
    exact, rounded = (
        width(keys, round_up="none").result,
        width(keys, round_up=f"{mixed(Fraction(sixteenths, 16))} in").result,
    )
    assert -1e-8 <= rounded - exact < step
    assert rounded / step == pytest.approx(round(rounded / step), abs=1e-9)


JOB = {
    "climate": {"hot_air": "95 F", "cold_air": "0 F", "peak_wall_irradiance": "800 W/m2"},
    "colors": {"C1": {"solar_reflectance": 0.4, "emittance": 0.3}},
    "elevations": {"E1": {"wall": "W1", "color": "C1", "peak_irradiance": "800 W/m2", "reflecting_surface_near": "no"}},
    "joints": {
        "J1": {
            "elevation": "E1",
            "panel_length": "20 ft",
            "thermal_expansion": "8e-6 /F",
            "moisture_strain": 0,
            "structural_closing": "0 in",
            "structural_opening": "0 in",
            "structural_shear": "0 in",
            "tolerance": "1/8 in",
            "install_low": "40 F",
            "install_high": "90 F",
            "sealant": "S1",
        }
    },
    "sealants": {"S1": {"c920_class": "50"}},
}


def test_a_joint_of_a_project_takes_its_heat_from_its_elevation(tmp_path: Path) -> None:
    resolver = pipeline.make_resolver(case_of(tmp_path, JOB).project)
    made, heat = resolver(("joints", "J1"), "joint-width"), resolver(("elevations", "E1"), "face-heat")
    assert {g.symbol: g.value for g in made.inputs}["T_hot"] == pytest.approx(heat.result)
    keys = {
        "length": "20 ft",
        "alpha": "8e-6 /F",
        "movement_class": "50",
        "tolerance": "1/8 in",
        "hot": f"{heat.result:.9f} F",
        "cold": "0 F",
        "install_low": "40 F",
        "install_high": "90 F",
    }
    assert made.result == width(keys).result
    assert value(made, "W") == pytest.approx(value(width(keys), "W"))
