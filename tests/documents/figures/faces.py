"""Elevations to draw, told as a project tells them."""

from pathlib import Path
from typing import Any

from specgen.documents.figures.elevation_facts import ElevationFacts, read_facts
from specgen.model.layout import ElevationLayout
from specgen.pipeline import make_resolver
from tests.support import project_of

FACE: dict[str, Any] = {
    "name": "South face",
    "facing": "S",
    "width": "40 ft",
    "height": "24 ft",
    "base_above_grade": "6 in",
    "openings": {"A": {"kind": "window", "x": "10 ft", "y": "4 ft", "width": "5 ft", "height": "4 ft"}},
    "floor_lines": {"F2": {"height": "12 ft"}},
    "impact_zones": [{"from": "0 ft", "to": "7 ft", "class": "high"}],
    "layout": {
        "mode": "given",
        "vertical_lines": [f"{place} ft" for place in range(5, 40, 5)],
        "horizontal_lines": [f"{place} ft" for place in (4, 8, 16, 20)],
    },
}
JOINTS: dict[str, Any] = {
    "J1": {
        "elevation": "E1",
        "kind": "opening_perimeter",
        "runs": "around_opening",
        "serves": ["A"],
        "width": "3/4 in",
    },
    "J2": {"elevation": "E1", "kind": "floor_line", "runs": "horizontal", "at": "12 ft", "width": "1 in"},
}
LIMITS = {"max_width": "5 ft", "max_height": "5 ft", "max_area": "25 sq ft", "least_side": "2 ft"}


def draw_of(
    folder: Path, face: Any = None, joints: Any = JOINTS, more: Any = None
) -> tuple[ElevationLayout, ElevationFacts]:
    """The layout and the facts of an elevation E1; `face` is laid over the usual one."""
    change = {"panel_limits": LIMITS, "elevations": {"E1": FACE | (face or {})}, "joints": joints} | (more or {})
    project = project_of(folder, change)
    return make_resolver(project)(("elevations", "E1"), "layout"), read_facts(project, "E1")


def large_face(columns: int = 40) -> tuple[dict[str, Any], dict[str, Any]]:
    """A face of 120 ft with 10 openings in each column of 7 ft 6 in, and its joints: 300 ft with 400 openings."""
    openings = {
        f"W{column + 1}-{row + 1}": {
            "kind": "window",
            "x": f"{1.5 + 7.5 * column} ft",
            "y": f"{4 + 12 * row} ft",
            "width": "4.5 ft",
            "height": "4 ft",
        }
        for column in range(columns)
        for row in range(10)
    }
    upright = sorted({side + 7.5 * column for column in range(columns) for side in (1.5, 6)})
    level = sorted({side + 12 * row for row in range(10) for side in (4, 8)} | {12 * row for row in range(1, 10)})
    lines = {
        "mode": "given",
        "vertical_lines": [f"{place} ft" for place in upright],
        "horizontal_lines": [f"{place} ft" for place in level if place != 48],
    }
    face = {
        "width": f"{7.5 * columns} ft",
        "height": "120 ft",
        "openings": openings,
        "layout": lines,
        "name": "Long face",
    }
    joints = {"J1": JOINTS["J1"] | {"serves": list(openings)}, "J2": JOINTS["J2"] | {"at": "48 ft"}}
    return face, joints
