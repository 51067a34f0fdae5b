"""The least time from board to gloss: the drying times that a wall has, one after the other."""

from pathlib import Path
from typing import Any

import pytest

from specgen.model.absence import Absent
from specgen.model.working import Working
from tests.computing._figures import beside, resolver_of
from tests.support import merged

PROJECT: dict[str, Any] = {
    "walls": {
        "W1": {
            "base_coat": {"first_pass_dry_hours": 12},
            "mesh": {"layers": [{"kind": "standard"}]},
        }
    },
}
HEAVY = {"mesh": {"layers": [{"kind": "high_impact", "dry_hours": 24}, {"kind": "standard"}]}}


def elapsed(folder: Path, wall: Any = None, **more: Any) -> Working:
    change = merged(PROJECT, {"walls": {"W1": wall or {}}} | more)
    made = resolver_of(folder, change)(("walls", "W1"), "minimum-elapsed")
    assert isinstance(made, Working)
    return made


# Adhesive 24, base coat 24, smoothing 24, primer 12, gloss 24 hours: common practice, no source. 108 and the first pass
# are their sum by hand; a heavy mesh is embedded first and takes a day more.
@pytest.mark.parametrize(
    ("wall", "hours"),
    [
        ({}, 108 + 12),
        (HEAVY, 132 + 12),
        ({"attachment": {"method": "mechanical"}}, 84 + 12),
        ({"attachment": {"cure_hours": 72}}, 156 + 12),
        ({"base_coat": {"cure_hours": 0, "first_pass_dry_hours": 0}}, 84),
    ],
)
def test_times_added_by_hand(wall: Any, hours: int, tmp_path: Path) -> None:
    made = elapsed(tmp_path, wall)
    assert (made.result, made.unit) == (hours, "h")
    assert beside(made) == {"minimum duration": pytest.approx(hours / 24)}


def test_two_heavy_layers_dry_one_after_the_other(tmp_path: Path) -> None:
    layers = [{"kind": "high_impact", "dry_hours": 24}, {"kind": "high_impact", "dry_hours": 36}, {"kind": "standard"}]
    assert elapsed(tmp_path, {"mesh": {"layers": layers}}).result == 108 + 12 + 24 + 36


def test_the_times_of_the_coating_source_come_before_the_usual_ones(tmp_path: Path) -> None:
    coating = {"primer": {"dry_hours": 16}, "gloss": {"dry_hours": 36}, "smoothing": {"dry_hours": 20}}
    assert elapsed(tmp_path, coating=coating).result == 24 + 12 + 24 + 20 + 16 + 36
    assert elapsed(tmp_path, coating=coating | {"smoothing": {"coats": 0}}).result == 24 + 12 + 24 + 16 + 36


@pytest.mark.parametrize(
    ("wall", "path"),
    [
        ({"base_coat": "drop"}, "walls.W1.base_coat.first_pass_dry_hours"),
        ({"mesh": {"layers": [{"kind": "high_impact"}]}}, "walls.W1.mesh.layers.0.dry_hours"),
        ({"mesh": "drop"}, "walls.W1.mesh.layers"),
    ],
)
def test_what_is_missing_is_named_and_not_made_up(wall: Any, path: str, tmp_path: Path) -> None:
    with pytest.raises(Absent) as absent:
        elapsed(tmp_path, wall)
    assert ".".join(absent.value.path) == path
