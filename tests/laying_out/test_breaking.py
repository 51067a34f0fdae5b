"""Roofs cut panels and aesthetic joints, and joints stop at ledges.

The wall is 12 ft wide and 12 ft high with lines every 4 ft; every length, area and count is worked out by hand from it.
"""

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from specgen.model.layout import AESTHETIC, ElevationLayout, Panel
from specgen.pipeline import make_resolver
from tests.support import project_of

FOOT = Fraction(3048, 10000)
LINES = {"mode": "given", "vertical_lines": ["4 ft", "8 ft"], "horizontal_lines": ["4 ft", "8 ft"]}
FACE = {"width": "12 ft", "height": "12 ft", "openings": {}, "layout": LINES}
# A roof that falls from 7 ft at the left to 5 ft where it ends, 8 ft to the right, with the board 3 in above it.
ROOF = {"kind": "roof_below", "elevation": "E1", "x": "0 ft", "y": "5 ft", "width": "8 ft", "height": "2 ft"}
END = {"kind": "roof_end", "elevation": "E1", "x": "8 ft", "y": "5 ft"}
SLOPED = {"RB1": ROOF | {"clearance": "3 in"}, "RE1": END}
LEDGE = {"kind": "ledge", "elevation": "E1", "x": "3 ft", "y": "5 ft", "width": "6 ft", "height": "1 ft"}


def lay(folder: Path, details: Any, face: Any = FACE) -> ElevationLayout:
    folder.mkdir(exist_ok=True)
    project = project_of(folder, {"elevations": {"E1": face}, "joints": {}, "details": details})
    layout = make_resolver(project)(("elevations", "E1"), "layout")
    assert isinstance(layout, ElevationLayout)
    return layout


def panels(layout: ElevationLayout) -> dict[str, Panel]:
    return {panel.mark.removeprefix("E1-"): panel for panel in layout.panels}


def runs(layout: ElevationLayout, mark: str) -> list[tuple[float, float]]:
    """The runs of a line from the left or from below, in feet."""
    found = [run for run in layout.joints if run.mark == f"E1-{mark}" and run.kind == AESTHETIC]
    return sorted((float((r.x1 + r.y1) / FOOT), float((r.x2 + r.y2) / FOOT)) for r in found)


def along(layout: ElevationLayout, mark: str) -> list[tuple[float, float]]:
    """The same without the place of the line itself."""
    at = 4 if mark.endswith("1") else 8
    return [(start - at, end - at) for start, end in runs(layout, mark)]


def test_a_roof_cuts_the_panels_it_crosses_into_one_below_and_one_above(tmp_path: Path) -> None:
    found = panels(lay(tmp_path, SLOPED))
    assert {"A2a", "A2b", "B2a", "B2b"} <= set(found) and not {"A2", "B2"} & set(found)
    # Over A the roof falls from 7 ft to 6 ft: 3 to 2 ft of wall below it, 0 ft 9 in to 1 ft 9 in above the 3 in.
    assert found["A2a"].net_area == 10 * FOOT**2
    assert found["A2b"].net_area == 4 * Fraction(5, 4) * FOOT**2
    # Halfway along the slope they are 2 ft wide and 1 ft 3 in high.
    assert (found["A2a"].least_side, found["A2b"].least_side) == (2 * FOOT, Fraction(5, 4) * FOOT)
    # Over B from 6 ft to 5 ft: 2 to 1 ft below, 1 ft 9 in to 2 ft 9 in above, halfway 1 ft 6 in high and 2 ft wide.
    assert (found["B2a"].least_side, found["B2b"].least_side) == (Fraction(3, 2) * FOOT, 2 * FOOT)
    assert found["C2"].is_rectangle and found["C2"].net_area == 16 * FOOT**2


def test_a_roof_with_a_thickness_ends_the_board_under_it_too(tmp_path: Path) -> None:
    thick = {"RB1": ROOF | {"clearance": "3 in", "thickness": "6 in"}, "RE1": END}
    found = panels(lay(tmp_path, thick))
    # Under A the board ends 6 in lower, 2 ft 6 in to 1 ft 6 in high; above it begins where it did.
    assert found["A2a"].net_area == 4 * 2 * FOOT**2
    assert found["A2b"].net_area == 4 * Fraction(5, 4) * FOOT**2
    project = project_of(tmp_path, {"elevations": {"E1": FACE}, "joints": {}, "details": thick})
    # 144 sq ft less 8 ft by 3 in above the roofing and 8 ft by 6 in below it.
    assert make_resolver(project)(("elevations", "E1"), "elevation-area").result == 138


def test_panels_and_what_a_roof_covers_add_up_to_the_wall(tmp_path: Path) -> None:
    """144 sq ft less 8 ft by 3 in; the net area of the elevation says the same."""
    project = project_of(tmp_path, {"elevations": {"E1": FACE}, "joints": {}, "details": SLOPED})
    resolve = make_resolver(project)
    layout = resolve(("elevations", "E1"), "layout")
    assert sum(panel.net_area for panel in layout.panels) == 142 * FOOT**2
    area = resolve(("elevations", "E1"), "elevation-area")
    assert area.result == 142
    assert [given.origin for given in area.inputs][-2:] == ["details.RB1.width", "details.RB1.clearance"]


def test_a_roof_breaks_the_lines_it_crosses(tmp_path: Path) -> None:
    layout = lay(tmp_path, SLOPED)
    # The line at 4 ft meets the roof 6 ft up and goes on 3 in above it; that at 8 ft stands at the end of the roof.
    assert along(layout, "V1") == [(0, 6), (6.25, 12)]
    assert along(layout, "V2") == [(0, 12)]
    assert along(layout, "H1") == along(layout, "H2") == [(0, 12)]
    assert layout.score.joint_length == Fraction(191, 4) * FOOT


def test_a_roof_across_a_level_line_takes_what_lies_between_it_and_the_board(tmp_path: Path) -> None:
    """From 9 ft at the left to 7 ft: 8 ft high at 4 ft across, and the board 3 in above that at 5 ft across."""
    details = {"RB1": ROOF | {"y": "7 ft", "clearance": "3 in"}, "RE1": END | {"y": "7 ft"}}
    assert along(lay(tmp_path, details), "H2") == [(0, 4), (5, 12)]


def test_a_level_roof_cuts_along_its_line(tmp_path: Path) -> None:
    details = {"RB1": {key: value for key, value in ROOF.items() if key != "height"} | {"clearance": "6 in"}}
    layout = lay(tmp_path, details)
    found = panels(layout)
    assert (found["A2a"].height, found["A2b"].height) == (FOOT, Fraction(5, 2) * FOOT)
    assert found["A2a"].is_rectangle and found["A2b"].is_rectangle
    assert along(layout, "V1") == [(0, 5), (5.5, 12)]


def test_a_roof_that_ends_within_a_panel_leaves_it_one_piece(tmp_path: Path) -> None:
    """6 ft of roof leave 2 ft of panel B beside their end, and below them a leg that is 1 ft 3 in high halfway."""
    roof = ROOF | {"width": "6 ft", "height": "1 ft 6 in", "clearance": "0 in"}
    details = {"RB1": roof, "RE1": END | {"x": "6 ft"}}
    found = panels(lay(tmp_path, details))
    # From 6 ft 6 in to 5 ft: 5 ft 6 in at 4 ft across, so 1 ft 6 in to 1 ft of B lie below it.
    assert found["B2"].net_area == 16 * FOOT**2
    assert found["B2"].least_side == Fraction(5, 4) * FOOT


@pytest.mark.parametrize(
    "details",
    [
        {"RB1": ROOF},  # high, and no end tells which way it falls
        {"RB1": {key: value for key, value in ROOF.items() if key != "x"}, "RE1": END},
        {"RB1": ROOF, "RE1": END | {"elevation": "E2"}},
        {"RB1": ROOF | {"elevation": "E2"}, "RE1": END | {"elevation": "E2"}},
        {"RB1": ROOF | {"kind": "deck_ledger"}, "RE1": END},
    ],
)
def test_what_is_no_roof_whose_line_is_known_cuts_nothing(details: Any, tmp_path: Path) -> None:
    project = {"elevations": {"E1": FACE, "E2": FACE}, "joints": {}, "details": details}
    layout = make_resolver(project_of(tmp_path, project))(("elevations", "E1"), "layout")
    assert len(layout.panels) == 9
    assert layout.score.joint_length == 48 * FOOT


def test_joints_stop_at_a_ledge_and_go_on_beyond_it(tmp_path: Path) -> None:
    layout = lay(tmp_path, {"LG1": LEDGE})
    assert along(layout, "V1") == along(layout, "V2") == [(0, 5), (6, 12)]
    assert along(layout, "H1") == [(0, 12)]
    assert len(layout.panels) == 9 and layout.score.joint_length == 46 * FOOT


def test_a_ledge_across_a_level_line_takes_its_width_and_one_along_it_too(tmp_path: Path) -> None:
    crossing = lay(tmp_path / "a", {"LG1": LEDGE | {"y": "3 ft 6 in"}})
    assert along(crossing, "H1") == [(0, 3), (9, 12)]
    assert along(lay(tmp_path / "b", {"LG1": LEDGE | {"y": "4 ft", "x": "4 ft", "width": "4 ft"}}), "H1") == [
        (0, 4),
        (8, 12),
    ]


def test_an_opening_beside_a_roof_is_cut_out_as_ever(tmp_path: Path) -> None:
    """A window of 1 ft by 1 ft below the roof, in panel A: a square foot less there, nothing above."""
    window = {"kind": "window", "x": "1 ft", "y": "4 ft 6 in", "width": "1 ft", "height": "1 ft"}
    found = panels(lay(tmp_path, SLOPED, FACE | {"openings": {"W": window}}))
    assert found["A2a"].net_area == 9 * FOOT**2
    assert found["A2b"].net_area == 5 * FOOT**2


def test_lines_are_proposed_as_if_there_were_no_roof_and_cut_by_it_all_the_same(tmp_path: Path) -> None:
    request = FACE | {"layout": {"mode": "request"}, "floor_lines": {}}
    plain, cut = lay(tmp_path / "a", {}, request), lay(tmp_path / "b", SLOPED, request)
    assert (plain.vertical_lines, plain.horizontal_lines) == (cut.vertical_lines, cut.horizontal_lines)
    assert sum(panel.net_area for panel in plain.panels) == 144 * FOOT**2
    assert sum(panel.net_area for panel in cut.panels) == 142 * FOOT**2
    assert cut.score.slivers > plain.score.slivers and any("narrower than the minimum side" in n for n in cut.notes)
