"""The steps behind which something dries, before a step of a wall; common practice, no source."""

from pathlib import Path
from typing import Any

import pytest

from specgen.scheduling.drying_before import list_drying_before
from specgen.standards import load_standards
from tests.support import project_of

HEAVY = {"walls": {"W1": {"mesh": {"layers": [{"kind": "high_impact"}, {"kind": "standard"}]}}}}


@pytest.mark.parametrize(
    ("wall", "step", "nearest"),
    [
        ({}, "primer", ("smoothing_2", "smoothing_1", "second_pass")),
        ({}, "gloss", ("primer", "smoothing_2")),
        ({}, "mesh", ("boards",)),
        (HEAVY, "mesh", ("heavy_mesh", "boards")),
        ({}, "heavy_mesh", ()),
        ({"walls": {"W1": {"attachment": {"method": "direct_applied"}}}}, "rasp", ()),
    ],
)
def test_what_dries_before_a_step(wall: Any, step: str, nearest: tuple[str, ...], tmp_path: Path) -> None:
    found = list_drying_before(project_of(tmp_path, wall), load_standards(), step, "W1")
    assert found[: len(nearest)] == nearest
    assert nearest or not found
