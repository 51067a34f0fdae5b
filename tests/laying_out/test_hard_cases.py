"""Elevations that are hard to lay out: what is proposed for each, and what is said where a demand cannot be met.

The figures are worked out by hand from the sizes typed here.
"""

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.laying_out.lists import joint_rows, layout_data, panel_rows
from specgen.model.layout import ElevationLayout
from tests.support import SMALL, merged, written

FOOT = Fraction(3048, 10000)
INCH = FOOT / 12


def offered(
    folder: Path, faces: dict[str, Any], joints: Any = None, **more: Any
) -> dict[str, tuple[ElevationLayout, ...]]:
    """The layouts of some elevations, openings and floor lines none where none are named."""
    usual = {"openings": {}, "floor_lines": {}, "layout": {"mode": "request"}}
    project = {"elevations": {mark: usual | face for mark, face in faces.items()}, "joints": joints or {}}
    read = pipeline.read(written(folder, merged(merged(SMALL, project), more)))
    resolve = pipeline.make_resolver(read)
    return {mark: resolve(("elevations", mark), "layouts") for mark in faces}


def proposed(folder: Path, face: dict[str, Any], joints: Any = None, **more: Any) -> ElevationLayout:
    return offered(folder, {"E1": face}, joints, **more)["E1"][0]


def box(x: str, y: str, width: str, height: str) -> dict[str, str]:
    return {"kind": "window", "x": x, "y": y, "width": width, "height": height}


def feet(lines: tuple[Fraction, ...]) -> list[float]:
    return [float(line / FOOT) for line in lines]


def test_a_plain_wall_has_as_few_lines_as_fit_evenly_spaced(tmp_path: Path) -> None:
    laid = proposed(tmp_path, {"width": "12 ft", "height": "9 ft"})
    assert (feet(laid.vertical_lines), feet(laid.horizontal_lines)) == ([4, 8], [4.5])
    assert laid.score.joint_length == 30 * FOOT
    assert laid.notes == ()


def test_a_wall_of_exactly_one_panel_needs_no_line(tmp_path: Path) -> None:
    laid = proposed(tmp_path, {"width": "5 ft", "height": "5 ft"})
    assert [panel.mark for panel in laid.panels] == ["E1-A1"]


def test_an_eighth_of_an_inch_more_needs_one(tmp_path: Path) -> None:
    laid = proposed(tmp_path, {"width": "5 ft 0-1/8 in", "height": "5 ft"})
    assert len(laid.panels) == 2
    assert laid.score.over_limits == laid.score.slivers == 0
    # A crew snaps lines to an eighth of an inch.
    assert (laid.vertical_lines[0] / (INCH / 8)).denominator == 1


def test_a_wall_under_two_feet_says_that_no_line_can_mend_it(tmp_path: Path) -> None:
    laid = proposed(tmp_path, {"width": "8 ft", "height": "18 in"})
    assert laid.score.slivers == len(laid.panels) == 2
    assert "minimum side of 2 ft" in laid.notes[0]
    assert "Least change: a minimum side of 1 ft 6 in" in laid.notes[0]


def test_an_opening_larger_than_a_panel(tmp_path: Path) -> None:
    face = {"width": "16 ft", "height": "14 ft", "openings": {"A": box("4 ft", "4 ft", "8 ft", "6 ft")}}
    laid = proposed(tmp_path, face)
    assert laid.score.over_limits == laid.score.slivers == 0
    assert sum(panel.net_area for panel in laid.panels) == (16 * 14 - 48) * FOOT**2


def test_piers_of_eighteen_inches_are_told_with_what_they_lack(tmp_path: Path) -> None:
    ribbon = {f"A{n}": box(f"{3 + 5.5 * n} ft", "4 ft", "4 ft", "4 ft") for n in range(4)}
    laid = proposed(tmp_path, {"width": "26.5 ft", "height": "12 ft", "openings": ribbon})
    assert laid.score.over_limits == 0
    told = next(note for note in laid.notes if note.startswith("No line can mend"))
    assert "1 ft 6 in between A0 and A1 (6 in short)" in told


def test_openings_at_an_edge_and_at_each_other(tmp_path: Path) -> None:
    openings = {"A": box("0 ft", "0 ft", "4 ft", "7 ft"), "B": box("4 ft", "0 ft", "3 ft", "7 ft")}
    laid = proposed(tmp_path, {"width": "12 ft", "height": "12 ft", "openings": openings})
    assert laid.score.over_limits == laid.score.slivers == 0
    assert sum(panel.net_area for panel in laid.panels) == (144 - 49) * FOOT**2


def test_an_arched_opening_is_cut_out_by_its_box(tmp_path: Path) -> None:
    # 4 ft wide, 6 ft to the crown: the box is taken out whole, the spandrels beside the arch with it.
    arch = box("4 ft", "0 ft", "4 ft", "6 ft") | {"kind": "other"}
    laid = proposed(tmp_path, {"width": "12 ft", "height": "9 ft", "openings": {"ARCH": arch}})
    assert laid.openings == (("ARCH", 4 * FOOT, 0, 4 * FOOT, 6 * FOOT),)
    assert sum(panel.net_area for panel in laid.panels) == (108 - 24) * FOOT**2
    assert {x for panel in laid.panels for x, _ in panel.outline} <= {0, 4 * FOOT, 8 * FOOT, 12 * FOOT}
    assert laid.score.over_limits == laid.score.slivers == 0


def test_a_movement_joint_an_inch_from_an_opening_cuts_all_the_same(tmp_path: Path) -> None:
    joints = {"J1": {"elevation": "E1", "kind": "building_expansion", "runs": "vertical", "at": "49 in"}}
    face = {"width": "10 ft", "height": "5 ft", "openings": {"A": box("2 ft", "0 ft", "2 ft", "3 ft")}}
    laid = proposed(tmp_path, face, joints)
    assert laid.score.slivers >= 1
    assert any("1 in between A and J1" in note for note in laid.notes)
    assert [joint.length for joint in laid.joints if joint.mark == "J1"] == [5 * FOOT]


def test_metric_limits_stay_metric(tmp_path: Path) -> None:
    laid = proposed(tmp_path, {"width": "6 m", "height": "3 m"}, package={"units": "si"})
    assert laid.vertical_lines == (Fraction(3, 2), 3, Fraction(9, 2))
    assert laid.horizontal_lines == (Fraction(3, 2),)
    assert not any("ft" in note for note in laid.notes)


def test_lines_lie_on_floor_lines_and_on_the_edges_named(tmp_path: Path) -> None:
    face = {
        "width": "14 ft",
        "height": "13 ft",
        "openings": {"A": box("5 ft", "3 ft", "4 ft", "4 ft")},
        "floor_lines": {"F2": {"height": "10 ft"}},
        "layout": {"mode": "request", "align_to": ["jambs", "heads"]},
    }
    laid = proposed(tmp_path, face)
    assert {5, 9} <= set(feet(laid.vertical_lines))
    assert {7, 10} <= set(feet(laid.horizontal_lines))
    assert laid.score.missed == 0


def test_an_edge_that_cannot_have_a_line_is_told_with_the_least_change(tmp_path: Path) -> None:
    # The jambs of B stand 1 ft to the right of those of A: lines at all four would leave strips of 1 ft.
    face = {
        "width": "13 ft",
        "height": "12 ft",
        "openings": {"A": box("4 ft", "0 ft", "4 ft", "3 ft"), "B": box("5 ft", "8 ft", "4 ft", "4 ft")},
        "layout": {"mode": "request", "align_to": ["jambs"]},
    }
    laid = proposed(tmp_path, face)
    assert feet(laid.vertical_lines) == [5, 8]
    assert (laid.score.over_limits, laid.score.slivers, laid.score.missed) == (0, 0, 2)
    told = next(note for note in laid.notes if note.startswith("No line at the left jamb of A, 4 ft from the left"))
    assert "too narrow; least change: a minimum side of 1 ft" in told


def test_a_wish_for_smaller_panels_is_kept_where_it_can_be(tmp_path: Path) -> None:
    face = {"width": "20 ft", "height": "4 ft", "layout": {"mode": "request", "target_width": "4 ft"}}
    assert feet(proposed(tmp_path, face).vertical_lines) == [4, 8, 12, 16]


def test_walls_that_meet_have_their_lines_at_one_height(tmp_path: Path) -> None:
    # E2 stands 1 ft higher and has a door; without E1 its lines would lie elsewhere.
    laid = offered(
        tmp_path,
        {
            "E1": {"width": "12 ft", "height": "14 ft", "base_above_grade": "1 ft", "right_meets": "E2"},
            "E2": {
                "width": "9 ft",
                "height": "11 ft",
                "base_above_grade": "2 ft",
                "left_meets": "E1",
                "openings": {"D": box("3 ft", "0 ft", "3 ft", "7 ft")},
            },
        },
    )
    one = {line + FOOT for line in laid["E1"][0].horizontal_lines}
    other = {line + 2 * FOOT for line in laid["E2"][0].horizontal_lines}
    assert other
    assert {at for at in one if 2 * FOOT < at < 13 * FOOT} == other


def test_lines_meet_those_that_are_given_round_the_corner(tmp_path: Path) -> None:
    lines = {"mode": "given", "vertical_lines": [], "horizontal_lines": ["3 ft", "7 ft"]}
    laid = offered(
        tmp_path,
        {
            "E1": {
                "width": "4 ft",
                "height": "10 ft",
                "base_above_grade": "0 ft",
                "right_meets": "E2",
                "layout": lines,
            },
            "E2": {"width": "9 ft", "height": "10 ft", "base_above_grade": "0 ft", "left_meets": "E1"},
        },
    )
    assert feet(laid["E2"][0].horizontal_lines) == [3, 7]


def test_a_gable_is_cut_along_its_rake(tmp_path: Path) -> None:
    points = ["0 ft, 0 ft", "20 ft, 0 ft", "20 ft, 8 ft", "10 ft, 14 ft", "0 ft, 8 ft"]
    laid = proposed(tmp_path, {"width": "20 ft", "height": "14 ft", "outline": points})
    assert sum(panel.net_area for panel in laid.panels) == (20 * 8 + 10 * 6) * FOOT**2
    assert laid.score.over_limits == 0
    assert max(y for panel in laid.panels for _, y in panel.outline) == 14 * FOOT


def test_a_stepped_top_is_cut_at_its_step(tmp_path: Path) -> None:
    points = ["0 ft, 0 ft", "20 ft, 0 ft", "20 ft, 15 ft", "10 ft, 15 ft", "10 ft, 10 ft", "0 ft, 10 ft"]
    laid = proposed(tmp_path, {"width": "20 ft", "height": "15 ft", "outline": points})
    assert sum(panel.net_area for panel in laid.panels) == (20 * 10 + 10 * 5) * FOOT**2
    assert laid.score.over_limits == laid.score.slivers == 0
    assert len(laid.panels) == 10


@pytest.mark.parametrize(("units", "unit", "side"), [("ip", "in", 48), ("si", "mm", 1219.2)])
def test_the_lists_are_numbers_in_the_unit_of_the_project(units: str, unit: str, side: float, tmp_path: Path) -> None:
    given = {"mode": "given", "vertical_lines": ["4 ft"], "horizontal_lines": []}
    laid = proposed(tmp_path, {"width": "8 ft", "height": "4 ft", "layout": given}, package={"units": units})
    data = layout_data([laid], units)
    assert (data["format"], data["unit"]) == (1, unit)
    assert data["elevations"]["E1"] == {
        "width": 2 * side,
        "height": side,
        "panels": [
            panel("E1-A1", 0, side, [[0, 0], [side, 0], [side, side], [0, side]]),
            panel("E1-B1", side, side, [[side, 0], [2 * side, 0], [2 * side, side], [side, side]]),
        ],
        "joints": [{"mark": "E1-V1", "kind": "aesthetic", "x1": side, "y1": 0, "x2": side, "y2": side, "length": side}],
        "proposal": "given",
        "notes": [],
    }
    assert panel_rows([laid], units)[0] == ["E1", "E1-A1", 0, 0, side, side, side, pytest.approx(side**2)]
    assert joint_rows([laid], units) == [["E1", "E1-V1", "aesthetic", side, 0, side, side, side]]


def panel(mark: str, x: float, side: float, outline: list[list[float]]) -> dict[str, Any]:
    sides = {"x": x, "y": 0, "width": side, "height": side, "least_side": side}
    return {"mark": mark, **sides, "net_area": pytest.approx(side**2), "outline": outline}


def test_lines_that_stop_are_offered_beside_those_that_run_through(tmp_path: Path) -> None:
    # Above the floor joint 5 ft 6 in of wall beside C needs a line 6 to 7 ft 6 in from the left; below it the pier of
    # 3 ft 6 in between the doors has no place for one. So one panel is narrow, or the line stops at the joint.
    openings = {
        "A": box("4 ft", "0 ft", "1 ft", "5 ft"),
        "B": box("8.5 ft", "0 ft", "1 ft", "5 ft"),
        "C": box("2 ft", "5 ft", "2 ft", "5 ft"),
    }
    joints = {"J1": {"elevation": "E1", "kind": "floor_line", "runs": "horizontal", "at": "5 ft"}}
    face = {"width": "9.5 ft", "height": "10 ft", "openings": openings}
    through, stopped = offered(tmp_path, {"E1": face}, joints)["E1"]
    assert (through.proposal, stopped.proposal) == ("through", "stopped")
    assert [(one.score.slivers, len(one.panels), one.score.joint_length / FOOT) for one in (through, stopped)] == [
        (1, 5, 5),
        (0, 5, 5),
    ]
    # At the jamb of A, which breaks it anyway, it leaves 1 ft beside C; at 6 ft, stopped at the joint, 2 ft.
    assert (feet(through.vertical_lines), feet(stopped.vertical_lines)) == ([5], [6])
    assert {(run.y1, run.y2) for run in stopped.joints if run.kind == "aesthetic"} == {(5 * FOOT, 10 * FOOT)}
    assert through.notes[0] == stopped.notes[0]
    assert through.notes[0] == (
        "Lines that run through leave 1 narrow panel, lines that stop at openings none. The price of lines that stop: "
        "5 ft of aesthetic joint, as much as by lines that run through."
    )


def test_four_hundred_openings_keep_to_the_limits(tmp_path: Path) -> None:
    openings = {
        f"W{column}-{row}": box(f"{3 + 7.5 * column} ft", f"{4 + 12 * row} ft", "4.5 ft", "4 ft")
        for column in range(40)
        for row in range(10)
    }
    laid = proposed(tmp_path, {"width": "303 ft", "height": "120 ft", "openings": openings})
    assert laid.score.over_limits == laid.score.slivers == 0
    assert sum(panel.net_area for panel in laid.panels) == (303 * 120 - 400 * 18) * FOOT**2


def test_two_hundred_elevations_are_each_laid_out(tmp_path: Path) -> None:
    faces = {f"E{n}": {"width": f"{8 + n % 9} ft", "height": "9 ft"} for n in range(200)}
    laid = offered(tmp_path, faces)
    assert len(laid) == 200
    # 8 to 10 ft of width take two columns, up to 15 ft three, 16 ft four; 9 ft of height two rows.
    assert [len(laid[f"E{n}"][0].panels) for n in range(9)] == [4, 4, 4, 6, 6, 6, 6, 6, 8]


def test_a_wish_that_a_large_wall_cannot_meet_is_told_with_the_least_change(tmp_path: Path) -> None:
    # Jambs of every other row stand 1 ft to the right: lines at all of them would leave strips of 1 ft.
    openings = {
        f"W{column}-{row}": box(f"{3 + 9 * column + row % 2} ft", f"{3 + 10 * row} ft", "4 ft", "4 ft")
        for column in range(20)
        for row in range(6)
    }
    face = {"width": "183 ft", "height": "60 ft", "openings": openings}
    laid = proposed(tmp_path, face | {"layout": {"mode": "request", "align_to": ["jambs"]}})
    told = next(note for note in laid.notes if note.startswith("No line at the"))
    assert "too narrow; least change: a minimum side of" in told
