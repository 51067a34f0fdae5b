"""The columns between upright joints, counted by hand."""

from pathlib import Path
from typing import Any

from specgen.laying_out.columns import measure_columns
from specgen.pipeline import make_resolver
from tests.support import project_of

SQUARE_FOOT = 0.09290304  # square meters; NIST SP 811, appendix B.8


def areas(folder: Path, change: Any) -> list[float]:
    layout = make_resolver(project_of(folder, change))(("elevations", "E1"), "layout")
    return [round(float(column.area) / SQUARE_FOOT, 6) for column in measure_columns(layout)]


def test_columns_lie_between_aesthetic_and_movement_joints_less_their_openings(tmp_path: Path) -> None:
    # 30 ft by 10 ft, cut at 10 and 18 ft; a window of 4 by 5 ft is in the middle one.
    face = {
        "width": "30 ft",
        "height": "10 ft",
        "openings": {"A": {"kind": "window", "x": "12 ft", "y": "3 ft", "width": "4 ft", "height": "5 ft"}},
        "layout": {"mode": "given", "vertical_lines": ["10 ft"], "horizontal_lines": []},
    }
    joint = {"J1": {"elevation": "E1", "kind": "eifs_to_eifs", "runs": "vertical", "at": "18 ft", "width": "3/4 in"}}
    assert areas(tmp_path, {"elevations": {"E1": face}, "joints": joint}) == [100, 60, 120]
