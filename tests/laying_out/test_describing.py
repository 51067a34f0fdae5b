"""An elevation as a face: what of the project names its panels."""

from pathlib import Path

import pytest

from specgen.pipeline import make_resolver
from tests.support import project_of

LINES = {"mode": "given", "vertical_lines": ["5 ft", "10 ft", "15 ft", "20 ft", "25 ft"], "horizontal_lines": []}
FACE = {"width": "30 ft", "height": "4 ft", "openings": {}, "layout": LINES}


@pytest.mark.parametrize(
    ("other", "columns"),
    [
        ("E2", "ABCDFG"),  # a panel E2 of the face E1 would read as the other face: common practice, no source
        ("B7", "ACDFGK"),
        ("West", "ABCDFG"),  # a word reads as no panel
    ],
)
def test_columns_leave_out_the_letters_that_begin_the_marks_of_elevations(
    tmp_path: Path, other: str, columns: str
) -> None:
    project = project_of(tmp_path, {"elevations": {"E1": FACE, other: {"width": "9 ft"}}, "joints": {}})
    layout = make_resolver(project)(("elevations", "E1"), "layout")
    assert [panel.mark for panel in layout.panels] == [f"E1-{column}1" for column in columns]
