"""The insulation board: what stays under a joint, and the least board that leaves enough and gives the R-value."""

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specgen.model.absence import Absent
from specgen.model.field import dotted_path
from specgen.model.problem import Refused
from specgen.model.working import Working
from specgen.resolving.provider import Resolver
from tests.computing._figures import beside, line, resolver_of, worked
from tests.computing.units_library import UNITS
from tests.support import merged, mixed

W1 = ("walls", "W1")


def board(**keys: str) -> Working:
    return worked("board-thickness", keys)


# Joint, rasp, groove, least board: 3/4 in stays under an aesthetic joint, Limitations on V-Grooves; by hand.
BY_HAND = [
    ("3/4", "0", "0", "1.5"),
    ("1/2", "0", "0", "1.25"),
    ("3/4", "1/16", "0", "1.5625"),
    ("3/4", "1/16", "1/4", "1.8125"),
    ("1/4", "0", "0", "1"),
]


@pytest.mark.parametrize(("joint", "rasp", "groove", "wanted"), BY_HAND)
def test_three_quarters_of_an_inch_stay_under_the_joint(joint: str, rasp: str, groove: str, wanted: str) -> None:
    made = board(joint_depth=f"{joint} in", rasp=f"{rasp} in", groove=f"{groove} in")
    assert Fraction(made.result) == Fraction(wanted)
    assert made.governing_case == "the aesthetic joint"


# R asked for, R of one inch, rasp, least board: thickness is R over R of one inch, by hand.
@pytest.mark.parametrize(
    ("r_value", "per_inch", "rasp", "wanted"),
    [("R-10", "R-4", "0 in", 2.5), ("R-10", "4", "1/16 in", 2.5625), ("R-7.5", "R-3.75", "0 in", 2.0)],
)
def test_a_board_thick_enough_for_its_r_value(r_value: str, per_inch: str, rasp: str, wanted: float) -> None:
    made = board(joint_depth="1/2 in", rasp=rasp, r_value=r_value, r_per_inch=per_inch)
    assert made.result == pytest.approx(wanted)
    assert made.governing_case == "the R-value"


def test_the_greater_of_the_two_governs() -> None:
    made = board(joint_depth="3/4 in", r_value="R-4", r_per_inch="R-4")
    assert (made.result, made.governing_case) == (1.5, "the aesthetic joint")
    assert line(made, "T_r") == 1


def test_without_a_joint_the_r_value_alone_asks_and_three_quarters_of_an_inch_are_the_least() -> None:
    assert board(r_value="R-8", r_per_inch="R-4").result == 2
    made = board(r_value="R-1", r_per_inch="R-4")
    assert (made.result, made.governing_case) == (0.75, "the remaining board")


@pytest.mark.parametrize(("joint", "wanted"), [("3/4", 1.5), ("5/8", 1.5), ("0.76", 1.75), ("1", 1.75)])
def test_the_next_board_made_stands_beside_it(joint: str, wanted: float) -> None:
    # Steps of 1/4 in: common practice, no source.
    assert beside(board(joint_depth=f"{joint} in")) == {"stock board": wanted}


def test_a_units_library_finds_the_same_board() -> None:
    # 1 h ft2 F/Btu as m2 K/W, by the library; R-4 per inch and R-10.
    unit = UNITS.hour * UNITS.ft**2 * UNITS.delta_degF / UNITS.Btu
    si = {"r": (10 * unit).to("m**2 K / W").magnitude, "one": (4 * unit).to("m**2 K / W").magnitude}
    made = board(joint_depth="12.7 mm", r_value=f"{si['r']:.9f} RSI", r_per_inch=f"{si['one']:.9f} RSI")
    assert made.unit == "mm"
    assert made.result == pytest.approx((2.5 * UNITS.inch).to("mm").magnitude, rel=1e-6)


@given(st.integers(2, 47), st.integers(0, 7), st.integers(0, 15), st.integers(1, 300), st.integers(10, 70))
def test_both_unit_systems_agree(joint: int, rasp: int, groove: int, r_value: int, per_inch: int) -> None:
    lengths = {"joint_depth": joint, "rasp": rasp, "groove": groove}
    resistances = {"r_value": f"R-{r_value / 10}", "r_per_inch": f"R-{per_inch / 10}"}
    ip = board(**{key: f"{mixed(Fraction(n, 16))} in" for key, n in lengths.items()}, **resistances)
    si = board(**{key: f"{n * 25.4 / 16:.9f} mm" for key, n in lengths.items()}, **resistances)
    assert (ip.unit, si.unit) == ("in", "mm")
    # 19 mm stays under a joint in metric work and 3/4 in elsewhere: practice.
    assert line(si, "T_j") - 19 == pytest.approx((line(ip, "T_j") - 0.75) * 25.4, abs=1e-6)
    assert line(si, "T_r") == pytest.approx(line(ip, "T_r") * 25.4, rel=1e-7)


@given(st.integers(2, 47), st.integers(0, 7), st.integers(0, 15), st.integers(1, 300), st.integers(10, 70))
def test_more_to_take_off_or_more_r_never_needs_less_board_and_a_better_one_never_more(
    joint: int, rasp: int, groove: int, r_value: int, per_inch: int
) -> None:
    def least(joint: int = joint, rasp: int = rasp, groove: int = groove, r: int = r_value, per: int = per_inch) -> Any:
        lengths = {
            "joint_depth": f"{mixed(Fraction(joint, 16))} in",
            "rasp": f"{mixed(Fraction(rasp, 16))} in",
            "groove": f"{mixed(Fraction(groove, 16))} in",
        }
        return board(**lengths, r_value=f"R-{r / 10}", r_per_inch=f"R-{per / 10}").result

    for more in (least(joint=joint + 1), least(rasp=rasp + 1), least(groove=groove + 1), least(r=r_value + 1)):
        assert more >= least()
    assert least(per=per_inch + 1) <= least()


@given(st.integers(2, 48), st.integers(0, 8), st.integers(0, 16))
def test_the_least_board_leaves_what_must_stay_and_no_more(joint: int, rasp: int, groove: int) -> None:
    made = board(
        joint_depth=f"{mixed(Fraction(joint, 16))} in",
        rasp=f"{mixed(Fraction(rasp, 16))} in",
        groove=f"{mixed(Fraction(groove, 16))} in",
    ).result
    assert made - (joint + rasp + groove) / 16 == 0.75


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({}, "nothing asks for a board"),
        ({"joint_depth": "-1/2 in"}, "joint_depth is -1/2 in"),
        ({"joint_depth": "1/2 in", "rasp": "-1/16 in"}, "rasp is -1/16 in"),
        ({"joint_depth": "1/2 in", "groove": "-1/4 in"}, "groove is -1/4 in"),
        ({"r_value": "R-8"}, "r_per_inch must be given with r_value"),
        ({"joint_depth": "1/2 in", "r_per_inch": "R-4"}, "r_value must be given with r_per_inch"),
        ({"r_value": "R-8", "r_per_inch": "R-0"}, "r_per_inch is R-0"),
        ({"r_value": "8", "r_per_inch": "4"}, "r_value: '8' has no unit"),
        ({"r_value": "R-8", "r_per_inch": "good"}, "write R-4 for R-4 per inch"),
        ({"r_value": "-8 R", "r_per_inch": "4"}, "r_value is R--8"),
    ],
)
def test_what_has_no_sense_is_refused(wrong: dict[str, str], said: str) -> None:
    with pytest.raises(Refused, match=said):
        board(**wrong)


def test_a_board_too_thin_for_a_joint_or_too_thick_for_the_wall_is_told() -> None:
    # 1 in under a joint: Limitations on V-Grooves; 4 in at most: UFGS 07240, page 20.
    assert any("with aesthetic joints: 1 in (" in note for note in board(joint_depth="1/8 in").notes)
    assert not any("with aesthetic joints" in note for note in board(joint_depth="1/4 in").notes)
    assert any("Board exceeds 4 in" in note for note in board(r_value="R-17", r_per_inch="R-4").notes)
    assert not any("Board exceeds 4 in" in note for note in board(r_value="R-16", r_per_inch="R-4").notes)


PROJECT: dict[str, Any] = {
    "aesthetic_joint": {"depth": "3/4 in"},
    "walls": {
        "W1": {
            "insulation": {"thickness": "1-1/2 in", "rasp_allowance": "0 in", "r_value": "R-6"},
            "drainage": {"kind": "adhesive_ribbons"},
        }
    },
}


def wall(**change: Any) -> dict[str, Any]:
    return {"walls": {"W1": change}}


def resolver(folder: Path, change: Any = None) -> Resolver:
    return resolver_of(folder, merged(PROJECT, change or {}))


GROOVED = wall(drainage={"kind": "grooved_board", "groove_depth": "1/4 in"})
RASPED = wall(insulation={"rasp_allowance": "1/16 in"})


# Change, board left, least board. 1-1/2 in less a joint of 3/4 in leaves 3/4 in; the rest by hand.
@pytest.mark.parametrize(
    ("change", "left", "least"),
    [
        ({}, "3/4", "3/2"),
        (RASPED, "11/16", "25/16"),
        (GROOVED, "1/2", "7/4"),
        ({"aesthetic_joint": {"depth": "1/2 in"}}, "1", "5/4"),
        (wall(insulation={"thickness": "1/2 in"}), "-1/4", "3/2"),
        (wall(drainage={"kind": "drainage_mat", "groove_depth": "1/4 in"}), "3/4", "3/2"),
        ({"code": {"required_r_value": "R-10"}}, "3/4", "5/2"),
        ({"code": {"required_r_value": "R-10"}} | RASPED, "11/16", "41/16"),
    ],
)
def test_a_wall_of_a_project(change: Any, left: str, least: str, tmp_path: Path) -> None:
    resolve = resolver(tmp_path, change)
    assert resolve(W1, "remaining-board").result == pytest.approx(float(Fraction(left)))
    assert resolve(W1, "board-thickness").result == pytest.approx(float(Fraction(least)))


def test_a_joint_through_the_board_is_told(tmp_path: Path) -> None:
    made = resolver(tmp_path, wall(insulation={"thickness": "1/2 in"}))(W1, "remaining-board")
    assert made.notes[-1] == "The joint cuts through the board."
    assert resolver(tmp_path)(W1, "remaining-board").notes == ("Minimum remaining board: 3/4 in.",)


def test_a_metric_project_reads_millimeters(tmp_path: Path) -> None:
    made = resolver(tmp_path, {"package": {"units": "si"}})(W1, "remaining-board")
    assert (made.unit, made.result) == ("mm", pytest.approx(19.05))


@pytest.mark.parametrize(
    ("change", "name", "paths"),
    [
        ({"aesthetic_joint": "drop"}, "remaining-board", ["aesthetic_joint.depth"]),
        (wall(insulation={"thickness": "drop"}), "remaining-board", ["walls.W1.insulation.thickness"]),
        (wall(drainage="drop"), "board-thickness", ["walls.W1.drainage.kind"]),
        (wall(insulation={"rasp_allowance": "drop"}), "board-thickness", ["walls.W1.insulation.rasp_allowance"]),
        (wall(drainage={"kind": "grooved_board"}), "board-thickness", []),
    ],
)
def test_what_is_missing_is_told_by_path(change: Any, name: str, paths: list[str], tmp_path: Path) -> None:
    resolve = resolver(tmp_path, change)
    assert [dotted_path(path) for path in resolve.missing(W1, name)] == paths
    with pytest.raises(Absent):
        resolve(W1, name)


def test_an_r_value_that_is_asked_for_needs_that_of_the_board(tmp_path: Path) -> None:
    change = {"code": {"required_r_value": "R-10"}} | wall(insulation={"r_value": "drop"})
    with pytest.raises(Absent, match=r"walls\.W1\.insulation\.r_value"):
        resolver(tmp_path, change)(W1, "board-thickness")
