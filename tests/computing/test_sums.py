"""The calculations against published cases, independent solutions and their own printed lines."""

import math
import re
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen import computing
from specgen.computing._asking import direct
from specgen.computing.face_heat import SIGMA, balanced
from specgen.computing.joint_width import CLASSES
from specgen.vocabulary.problem import Refused
from specgen.vocabulary.project import Absent
from specgen.vocabulary.provider import CycleError, Provider, Resolver
from specgen.vocabulary.working import Working
from tests.support import case_of

# Cornell University, ARCH 262, sealant joint assignment, fall 2007: clay brick panel of 30 ft.
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
RANGE = {
    "length": "20 ft",
    "alpha": "8e-6 /F",
    "movement_class": "25",
    "tolerance": "0 in",
    "temperature_range": "100 F",
}


def width(keys: dict[str, str], **more: str) -> Working:
    return direct(computing.find("joint-width"), keys | more)


def value(working: Working, symbol: str) -> float:
    return next(float(step.value) for step in working.steps if step.symbol == symbol)


@pytest.mark.parametrize(
    ("symbol", "wanted"), [("D_c", 0.3803), ("D_o", 0.3666), ("W_c", 0.7607), ("W_o", 0.7332), ("W", 0.8857)]
)
def test_the_two_sided_check_of_a_published_assignment(symbol: str, wanted: float) -> None:
    # Its totals and doubled lines are printed; 0.8857 adds the tolerance of 1/8 in. Lines are rounded to four places.
    assert value(width(CORNELL), symbol) == pytest.approx(wanted, abs=1.1e-4)


def test_a_joint_is_rounded_up_and_not_to_the_nearest() -> None:
    assert width(CORNELL).result == 15 / 16
    assert width(CORNELL, round_up="1/8 in").result == 1
    assert width(CORNELL, round_up="none").result == pytest.approx(0.8857, abs=1.1e-4)
    assert width(CORNELL).governs == "closing"


def test_the_spacing_of_a_specifiers_published_brick_example() -> None:
    # Joints of 3/8 in, class 50, 0.0004 thermal and 0.0005 moisture strain: 208 in, a specifier's blog.
    made = width(
        {
            "length": "208.333333 in",
            "alpha": "4e-6 /F",
            "movement_class": "50",
            "tolerance": "0 in",
            "temperature_range": "100 F",
            "moisture_strain": "0.0005",
            "round_up": "none",
        }
    )
    assert made.result == pytest.approx(3 / 8, rel=1e-6)


def test_the_spacing_form_of_the_brick_industry() -> None:
    # BIA Technical Note 18A: S = w e / 0.09; half an inch at 50 percent gives 278 in (from memory).
    spacing = 0.5 * 50 / 0.09
    made = width(
        {
            "length": f"{spacing:.6f} in",
            "alpha": "4e-6 /F",
            "movement_class": "50",
            "tolerance": "0 in",
            "temperature_range": "100 F",
            "moisture_strain": "0.0005",
            "round_up": "none",
        }
    )
    assert spacing == pytest.approx(278, abs=0.5)
    assert made.result == pytest.approx(0.5, rel=1e-6)


def solved(opening: float, shear: float, extension: float) -> float:
    """The width at which the diagonal of the moved bead is 1 + extension times the bead; by halving."""
    low, high = 1e-9, 1e4
    for _ in range(200):
        middle = (low + high) / 2
        stretched = math.hypot(middle + opening, shear) / middle > 1 + extension
        low, high = (middle, high) if stretched else (low, middle)
    return high


@pytest.mark.parametrize("movement_class", ["12.5", "25", "35", "50", "100/50"])
@pytest.mark.parametrize(("opening", "shear"), [("0 in", "1/4 in"), ("1/8 in", "1/4 in"), ("1/4 in", "1/16 in")])
def test_shear_and_extension_stretch_the_diagonal_of_the_bead_to_its_class(
    movement_class: str, opening: str, shear: str
) -> None:
    made = width(
        RANGE,
        movement_class=movement_class,
        temperature_range="0 F",
        structural_opening=opening,
        structural_shear=shear,
        round_up="none",
    )
    moved = [eval(text.removesuffix(" in")) for text in (opening, shear)]  # noqa: S307  our own fractions
    assert value(made, "W_o") == pytest.approx(solved(*moved, CLASSES[movement_class][0]), rel=1e-6)


def test_class_100_50_extends_by_its_whole_width_and_closes_by_half() -> None:
    made = width(RANGE, movement_class="100/50", round_up="none")
    assert value(made, "W_c") == pytest.approx(2 * value(made, "W_o"))


def test_no_movement_needs_the_tolerance_alone() -> None:
    assert width(RANGE, temperature_range="0 F", tolerance="1/8 in").result == 1 / 8


def test_what_governs_is_named() -> None:
    assert width(RANGE, structural_opening="1 in").governs == "opening"
    assert width(RANGE, structural_closing="1 in").governs == "closing"
    assert width(RANGE, structural_shear="1 in").governs == "opening with shear"


def test_both_unit_systems_agree() -> None:
    metric = {
        "length": "9.144 m",
        "alpha": "6.48e-6 /C",
        "movement_class": "50",
        "tolerance": "3.175 mm",
        "hot": "40.5556 C",
        "cold": "-26.1111 C",
        "install_low": "15.5556 C",
        "install_high": "23.8889 C",
        "moisture_strain": "0.0002",
        "structural_closing": "6.35 mm",
        "structural_opening": "6.35 mm",
        "round_up": "none",
    }
    made = width(metric)
    assert made.unit == "mm"
    assert made.result / 25.4 == pytest.approx(width(CORNELL, round_up="none").result, rel=1e-5)


@pytest.mark.parametrize(
    "wrong",
    [
        {"movement_class": "60"},
        {"length": "-1 ft"},
        {"hot": "50 F", "cold": "60 F"},
        {"install_low": "80 F"},
        {"moisture_strain": "-1"},
        {"temperature_range": "100 F"},
        {"structural_shear": "-1 in"},
        {"hot": ""},
    ],
)
def test_what_has_no_sense_is_refused(wrong: dict[str, str]) -> None:
    with pytest.raises(Refused):
        width(CORNELL, **wrong)


@given(st.integers(1, 400), st.integers(0, 200), st.sampled_from(sorted(CLASSES)))
def test_more_length_or_heat_never_needs_less_width(feet: int, degrees: int, movement_class: str) -> None:
    base = width(
        RANGE, length=f"{feet} ft", temperature_range=f"{degrees} F", movement_class=movement_class, round_up="none"
    ).result
    longer = width(
        RANGE, length=f"{feet + 1} ft", temperature_range=f"{degrees} F", movement_class=movement_class, round_up="none"
    )
    hotter = width(
        RANGE, length=f"{feet} ft", temperature_range=f"{degrees + 1} F", movement_class=movement_class, round_up="none"
    )
    assert longer.result >= base
    assert hotter.result >= base


HEAT = {"hot_air": "95 F", "solar_reflectance": "0.40", "emittance": "0.30", "irradiance": "800 W/m2"}


def heat(**more: str) -> Working:
    return direct(computing.find("face-heat"), HEAT | more)


def test_the_joint_rule_of_face_heat_reaches_the_softening_of_eps() -> None:
    # 95 F + 0.7 x 100 F = 165 F: the rule from memory; the limit of EPS from a trade column.
    assert value(heat(solar_reflectance="0.30"), "T_1") == 165
    assert value(heat(), "T_1") == 155
    assert value(heat(reflected="yes"), "T_1") == 95 + 0.6 * 130


@pytest.mark.parametrize(
    ("reflectance", "emittance", "irradiance"),
    [(0.4, 0.3, 800.0), (0.05, 0.9, 1000.0), (0.8, 0.9, 300.0), (0.4, 0.0, 800.0)],
)
def test_the_heat_balance_closes(reflectance: float, emittance: float, irradiance: float) -> None:
    gain, air = (1 - reflectance) * irradiance, 308.15
    face = balanced(gain, emittance, air)
    assert emittance * SIGMA * (face**4 - air**4) + 12 * (face - air) == pytest.approx(gain, abs=1e-7)


def test_face_heat_agrees_in_both_unit_systems_and_names_what_governs() -> None:
    assert value(heat(), "T_2") == pytest.approx(155.3, abs=0.06)
    metric = heat(hot_air="35 C")
    assert metric.unit == "C"
    assert metric.result * 1.8 + 32 == pytest.approx(heat().result)
    assert heat().governs == "heat balance"
    assert heat(emittance="0.9").governs == "joint rule"


SAMPLES = {
    "joint-width": [CORNELL, RANGE, RANGE | {"structural_shear": "1/4 in"}, RANGE | {"length": "6 m"}],
    "face-heat": [HEAT, HEAT | {"hot_air": "35 C", "reflected": "yes"}],
}
PRINTED = {"sqrt": math.sqrt, "max": max, "min": min, "ceil": math.ceil, "abs": abs, "__builtins__": {}}


def test_every_calculation_has_a_sample() -> None:
    assert set(SAMPLES) == {name for name in computing.names() if computing.find(name).direct}


@pytest.mark.parametrize(("name", "keys"), [(n, k) for n, rows in SAMPLES.items() for k in rows])
def test_every_printed_line_is_the_sum_it_says(name: str, keys: dict[str, str]) -> None:
    working = direct(computing.find(name), keys)
    for step in working.steps:
        figures = step.substitution.replace("^", "**")
        assert not re.search(r"[A-Za-z_]\w*(?!\w*\()", re.sub(r"sqrt|max|min|ceil|abs|\de-?\d", "", figures)), figures
        # Figures are printed to six digits; a width just below a sixteenth may print as on it.
        assert eval(figures, PRINTED) == pytest.approx(float(step.value), rel=2e-4, abs=2e-4)  # noqa: S307


def provided(folder: Path, change: Any, path: tuple[str, ...], name: str) -> Any:
    return Resolver(case_of(folder, change).project, computing.find)(path, name)


FRAMED = {"framing": {"kind": "wood"}, "substrate": {"kind": "osb"}}
# International Building Code 2024, section 1407, and International Residential Code, R703.9.
DRAINAGE = [
    ({"code": {"model": "ibc", "construction_type": "VA", "occupancy_groups": [group]}, "walls": {"W1": FRAMED}}, True)
    for group in ("R-1", "R-2", "R-3", "R-4")
] + [
    (
        {"code": {"model": "ibc", "construction_type": "VB", "occupancy_groups": ["B", "M"]}, "walls": {"W1": FRAMED}},
        False,
    ),
    (
        {"code": {"model": "ibc", "construction_type": "IIB", "occupancy_groups": ["R-2"]}, "walls": {"W1": FRAMED}},
        False,
    ),
    (
        {
            "code": {"model": "ibc", "construction_type": "VB", "occupancy_groups": ["R-2"]},
            "walls": {"W1": {"framing": {"kind": "none"}}},
        },
        False,
    ),
    ({"code": {"model": "irc"}, "walls": {"W1": {"substrate": {"kind": "osb"}}}}, True),
    ({"code": {"model": "irc"}, "walls": {"W1": {"substrate": {"kind": "concrete_masonry"}}}}, False),
]


@pytest.mark.parametrize(("change", "due"), DRAINAGE)
def test_drainage_is_due_where_the_code_says(change: Any, due: bool, tmp_path: Path) -> None:
    found = provided(tmp_path, change, ("walls", "W1"), "drainage-due")
    assert found.result is due
    assert found.why and found.source


@pytest.mark.parametrize(
    ("wall", "due"),
    [
        (
            {
                "substrate": {"kind": "glass_mat_gypsum"},
                "wrb": {"kind": "fluid_applied"},
                "drainage": {"kind": "adhesive_ribbons"},
            },
            True,
        ),
        (
            {
                "substrate": {"kind": "glass_mat_gypsum"},
                "wrb": {"kind": "self_adhered_sheet"},
                "drainage": {"kind": "adhesive_ribbons"},
            },
            False,
        ),
        (
            {
                "substrate": {"kind": "glass_mat_gypsum"},
                "wrb": {"kind": "self_adhered_sheet"},
                "drainage": {"kind": "none"},
            },
            True,
        ),
        ({"substrate": {"kind": "concrete"}, "wrb": {"kind": "none"}, "drainage": {"kind": "none"}}, False),
    ],
)
def test_special_inspection_is_due_but_for_its_exceptions(wall: Any, due: bool, tmp_path: Path) -> None:
    # International Building Code commentary: drained over a barrier, or over concrete or masonry;
    # a coating on sheathing is inspected.
    change = {"code": {"model": "ibc"}, "walls": {"W1": wall}}
    assert provided(tmp_path, change, (), "special-inspection-due").result is due


def test_a_value_is_computed_once_and_a_circle_is_refused(tmp_path: Path) -> None:
    calls = []

    def compute(view: Any, ask: Any) -> int:
        calls.append(view.path)
        return ask("b") if len(calls) > 5 else 7

    providers = {
        "a": Provider("a", "A", (), compute),
        "b": Provider("b", "B", (), lambda v, ask: ask("c")),
        "c": Provider("c", "C", (), lambda v, ask: ask("b")),
    }
    resolver = Resolver(case_of(tmp_path).project, providers.__getitem__)
    assert resolver((), "a") == resolver(("walls", "W1"), "a") == 7
    assert calls == [()]
    with pytest.raises(CycleError, match="b.*c.*b"):
        resolver((), "b")


def test_what_is_missing_is_named_by_path_all_of_it(tmp_path: Path) -> None:
    project = case_of(tmp_path, {"elevations": {"E1": {}}, "joints": {"J1": {"elevation": "E1"}}}).project
    resolver = Resolver(project, computing.find)
    with pytest.raises(Absent):
        resolver(("joints", "J1"), "joint-width")
    missing = {".".join(path) for path in resolver.missing(("joints", "J1"), "joint-width")}
    assert {"climate.hot_air", "climate.cold_air", "joints.J1.panel_length", "elevations.E1.color"} <= missing


def test_no_two_calculations_wait_for_one_another() -> None:
    def below(name: str, seen: tuple[str, ...]) -> None:
        assert name not in seen, seen
        for need in computing.find(name).needs:
            below(need, (*seen, name))

    for name in computing.names():
        below(name, ())
