"""Walls that are hard to lay out, as proposed and drawn: every sheet is in order and every panel is told on it."""

import re
from pathlib import Path
from typing import Any

import pytest

from specgen.documents.figures.elevation import draw_elevations
from tests.documents.figures.faces import draw_of
from tests.documents.figures.sheets import read_sheet
from tests.documents.figures.test_elevation import PAPERS, faults


def window(x: str, y: str, width: str, height: str) -> dict[str, str]:
    return {"kind": "window", "x": x, "y": y, "width": width, "height": height}


RIBBON = {f"A{n}": window(f"{3 + 5.5 * n} ft", "4 ft", "4 ft", "4 ft") for n in range(4)}
EXPANSION = {"elevation": "E1", "kind": "building_expansion", "runs": "vertical"}
# Each with a length that is to be read on its sheet.
HARD: dict[str, tuple[dict[str, Any], dict[str, Any], str]] = {
    "no opening": ({"width": "12 ft", "height": "9 ft"}, {}, "4′-0″"),
    "an opening larger than a panel": (
        {"width": "16 ft", "height": "14 ft", "openings": {"A": window("4 ft", "4 ft", "8 ft", "6 ft")}},
        {},
        "16′-0″",
    ),
    "a ribbon 18 in apart": ({"width": "25.5 ft", "height": "12 ft", "openings": RIBBON}, {}, "1′-6″"),
    "openings at an edge and at each other": (
        {
            "width": "12 ft",
            "height": "12 ft",
            "openings": {"A": window("0 ft", "0 ft", "4 ft", "7 ft"), "B": window("4 ft", "0 ft", "3 ft", "7 ft")},
        },
        {},
        "12′-0″",
    ),
    "openings at every edge": (
        {
            "width": "12 ft",
            "height": "12 ft",
            "openings": {"A": window("0 ft", "4 ft", "3 ft", "4 ft"), "B": window("4 ft", "9 ft", "8 ft", "3 ft")},
        },
        {},
        "12′-0″",
    ),
    "an elevation of 18 in": ({"width": "8 ft", "height": "18 in"}, {}, "1′-6″"),
    "an elevation 18 in wide": ({"width": "18 in", "height": "11 ft"}, {}, "1′-6″"),
    "an elevation of exactly 5 ft": ({"width": "5 ft", "height": "5 ft"}, {}, "5′-0″"),
    "panels of 5 ft 0-1/8 in": (
        {
            "width": "10 ft 0-1/4 in",
            "height": "5 ft",
            "layout": {"mode": "given", "vertical_lines": ["5 ft 0-1/8 in"], "horizontal_lines": []},
        },
        {},
        "5′-0⅛″",
    ),
    "a movement joint 1 in from an opening": (
        {"width": "10 ft", "height": "5 ft", "openings": {"A": window("2 ft", "0 ft", "2 ft", "3 ft")}},
        {"J1": EXPANSION | {"at": "49 in"}},
        "4′-1″",
    ),
    "a step": (
        {
            "width": "20 ft",
            "height": "15 ft",
            "outline": ["0 ft, 0 ft", "20 ft, 0 ft", "20 ft, 15 ft", "10 ft, 15 ft", "10 ft, 10 ft", "0 ft, 10 ft"],
        },
        {},
        "20′-0″",
    ),
}
PLAIN: dict[str, Any] = {"openings": {}, "floor_lines": {}, "impact_zones": [], "layout": {"mode": "request"}}


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("case", HARD)
def test_a_hard_wall_is_drawn_in_order_on_every_paper(case: str, paper: str, tmp_path: Path) -> None:
    face, joints, length = HARD[case]
    layout, facts = draw_of(tmp_path, PLAIN | face, joints)
    drawn = next(draw_elevations([(layout, facts)], paper))
    sheets = [read_sheet(each.svg) for each in drawn]
    assert [problem for sheet in sheets for problem in faults(sheet)] == []
    words = [word for sheet in sheets for word in sheet.words]
    assert length in words
    for panel in layout.panels:
        mark = panel.mark.removeprefix("E1-")
        assert [word for word in words if re.fullmatch(rf"(\d+ = )?{mark}", word)], mark


@pytest.mark.parametrize("paper", ["a4", "a3"])
def test_limits_of_a_meter_and_a_half_are_drawn_and_told_in_metric_alone(paper: str, tmp_path: Path) -> None:
    """6 by 3 m by the usual limits of metric work, 1.5 m: four columns and two rows."""
    more = {"package": {"purpose": "design_draft", "units": "si"}, "panel_limits": {}}
    layout, facts = draw_of(tmp_path, PLAIN | {"width": "6 m", "height": "3 m"}, {}, more)
    sheets = [read_sheet(each.svg) for each in next(draw_elevations([(layout, facts)], paper))]
    words = [word for sheet in sheets for word in sheet.words]
    assert words.count("1500") == 6
    assert not [word for word in words if re.search(r"4\.92|\d (ft|in)\b|′|″", word)]
