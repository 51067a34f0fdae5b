"""The area that a step covers, worked by hand in feet: width by height of the zone, less the openings in it."""

from pathlib import Path
from typing import Any

import pytest

from specgen.scheduling.step_area import find_step_area
from tests.support import project_of

ZONES = [{"from": "0 ft", "to": "7 ft", "class": "high"}, {"from": "7 ft", "to": "20 ft 9 in", "class": "standard"}]
# From 4 to 8 ft above the lower edge: the zone ends at 6 ft 3 in.
WINDOW = {"kind": "window", "x": "4 ft", "y": "4 ft", "width": "9 ft", "height": "4 ft"}
FACE: dict[str, Any] = {
    "width": "40 ft",
    "height": "20 ft",
    "base_above_grade": "9 in",
    "openings": {"WD1": WINDOW},
    "impact_zones": ZONES,
}


@pytest.mark.parametrize(
    ("change", "step", "square_feet"),
    [
        ({}, "mesh", 40 * 20 - 36),
        ({}, "heavy_mesh", 40 * 6.25 - 9 * 2.25),
        ({"impact_zones": []}, "heavy_mesh", 40 * 20 - 36),
        # Two zones that overlap are counted once: 0.75 to 7 ft and 5 to 9 ft above grade are 8.25 ft of wall.
        (
            {"impact_zones": [ZONES[0], {"from": "5 ft", "to": "9 ft", "class": "ultra_high"}]},
            "heavy_mesh",
            40 * 8.25 - 36,
        ),
        # A gable of no eaves: 40 ft wide below, at 6.25 ft 40 x (1 - 6.25 / 20) = 27.5 ft.
        (
            {"outline": ["0 ft, 0 ft", "40 ft, 0 ft", "20 ft, 20 ft"], "openings": {}},
            "heavy_mesh",
            (40 + 27.5) / 2 * 6.25,
        ),
    ],
)
def test_a_step_covers_the_wall_or_its_zone(
    change: dict[str, Any], step: str, square_feet: float, tmp_path: Path
) -> None:
    project = project_of(tmp_path, {"elevations": {"E1": FACE | change}})
    area = find_step_area(project.view(("elevations", "E1")), step)
    assert float(area.to("ft2")) == pytest.approx(square_feet)
