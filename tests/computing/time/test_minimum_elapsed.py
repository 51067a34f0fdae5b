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
    "coating": {"smoothing": {"between_hours": 4}, "gloss": {"touch_dry_hours": "1.5"}},
}
HEAVY = {"mesh": {"layers": [{"kind": "high_impact", "dry_hours": 24}, {"kind": "standard"}]}}


def elapsed(folder: Path, wall: Any = None, **more: Any) -> Working:
    change = merged(PROJECT, {"walls": {"W1": wall or {}}} | more)
    made = resolver_of(folder, change)(("walls", "W1"), "minimum-elapsed")
    assert isinstance(made, Working)
    return made


# Adhesive 24, base coat 24, smoothing 24, primer 12, gloss 24 hours: common practice, no source. 108 and the first
# pass, with 4 h between two coats of smoothing and 1.5 h between two of gloss, are their sum by hand; a heavy mesh is
# embedded first and takes a day more.
@pytest.mark.parametrize(
    ("wall", "hours"),
    [
        ({}, 108 + 12 + 5.5),
        (HEAVY, 132 + 12 + 5.5),
        ({"attachment": {"method": "mechanical"}}, 84 + 12 + 5.5),
        ({"attachment": {"cure_hours": 72}}, 156 + 12 + 5.5),
        ({"base_coat": {"cure_hours": 0, "first_pass_dry_hours": 0}}, 84 + 5.5),
    ],
)
def test_times_added_by_hand(wall: Any, hours: float, tmp_path: Path) -> None:
    made = elapsed(tmp_path, wall)
    assert (made.result, made.unit) == (hours, "h")
    assert beside(made) == {"minimum duration": pytest.approx(hours / 24)}


def test_two_heavy_layers_dry_one_after_the_other(tmp_path: Path) -> None:
    layers = [{"kind": "high_impact", "dry_hours": 24}, {"kind": "high_impact", "dry_hours": 36}, {"kind": "standard"}]
    assert elapsed(tmp_path, {"mesh": {"layers": layers}}).result == 108 + 12 + 24 + 36 + 5.5


def test_the_times_of_the_coating_source_come_before_the_usual_ones(tmp_path: Path) -> None:
    coating = {"primer": {"dry_hours": 16}, "gloss": {"dry_hours": 36}, "smoothing": {"dry_hours": 20}}
    assert elapsed(tmp_path, coating=coating).result == 24 + 12 + 24 + 4 + 20 + 16 + 1.5 + 36
    bare = coating | {"smoothing": {"coats": 0}}
    assert elapsed(tmp_path, coating=bare).result == 24 + 12 + 24 + 16 + 1.5 + 36


def test_each_coat_waits_for_the_one_below_it(tmp_path: Path) -> None:
    # Three coats of smoothing and of gloss wait twice each: 2 * 4 + 2 * 1.5 h in place of 4 + 1.5 h; one coat never.
    assert elapsed(tmp_path, coating={"smoothing": {"coats": 3}, "gloss": {"coats": 3}}).result == 108 + 12 + 8 + 3
    assert elapsed(tmp_path, coating={"smoothing": {"coats": 1}, "gloss": {"coats": 1}}).result == 108 + 12


def test_a_mockup_that_shows_a_sealant_joint_waits_for_the_slowest_sealant(tmp_path: Path) -> None:
    sealants = {"S1": {"pull_cure_days": 7}, "S2": {"pull_cure_days": 21}}
    made = elapsed(tmp_path, mockup={"includes": ["sealant_joint"]}, sealants=sealants)
    assert made.result == 108 + 12 + 5.5 + 21 * 24
    assert elapsed(tmp_path, mockup={"includes": ["full_panel"]}, sealants=sealants).result == 108 + 12 + 5.5


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
