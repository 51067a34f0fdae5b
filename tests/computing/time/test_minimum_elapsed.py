"""The least time from board to gloss: the drying times that a wall has, one after the other."""

from pathlib import Path
from typing import Any

import pytest

from specgen.model.absence import Absent
from specgen.model.working import Working
from tests.computing._figures import line, resolver_of
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
    assert line(made, "t") == hours
    assert (made.result, made.unit) == (pytest.approx(hours / 24), "d")


def test_two_heavy_layers_dry_one_after_the_other(tmp_path: Path) -> None:
    layers = [{"kind": "high_impact", "dry_hours": 24}, {"kind": "high_impact", "dry_hours": 36}, {"kind": "standard"}]
    assert line(elapsed(tmp_path, {"mesh": {"layers": layers}}), "t") == 108 + 12 + 24 + 36 + 5.5


def test_the_times_of_the_coating_source_come_before_the_usual_ones(tmp_path: Path) -> None:
    coating = {"primer": {"dry_hours": 16}, "gloss": {"dry_hours": 36}, "smoothing": {"dry_hours": 20}}
    assert line(elapsed(tmp_path, coating=coating), "t") == 24 + 12 + 24 + 4 + 20 + 16 + 1.5 + 36
    bare = coating | {"smoothing": {"coats": 0}}
    assert line(elapsed(tmp_path, coating=bare), "t") == 24 + 12 + 24 + 16 + 1.5 + 36


def test_each_coat_waits_for_the_one_below_it(tmp_path: Path) -> None:
    # Three coats of smoothing and of gloss wait twice each: 2 * 4 + 2 * 1.5 h in place of 4 + 1.5 h; one coat never.
    assert line(elapsed(tmp_path, coating={"smoothing": {"coats": 3}, "gloss": {"coats": 3}}), "t") == 108 + 12 + 8 + 3
    assert line(elapsed(tmp_path, coating={"smoothing": {"coats": 1}, "gloss": {"coats": 1}}), "t") == 108 + 12


def test_a_mockup_that_shows_a_sealant_joint_waits_for_the_slowest_sealant(tmp_path: Path) -> None:
    sealants = {"S1": {"pull_cure_days": 7}, "S2": {"pull_cure_days": 21}}
    made = elapsed(tmp_path, mockup={"includes": ["sealant_joint"]}, sealants=sealants)
    assert line(made, "t") == 108 + 12 + 5.5 + 21 * 24
    assert line(elapsed(tmp_path, mockup={"includes": ["full_panel"]}, sealants=sealants), "t") == 108 + 12 + 5.5


def test_a_barrier_that_dries_is_waited_for_before_the_board(tmp_path: Path) -> None:
    wet = elapsed(tmp_path, {"wrb": {"kind": "fluid_applied", "dry_hours": 24}})
    assert line(wet, "t") == 24 + 108 + 12 + 5.5
    assert next(step.name for step in wet.steps) == "drying time, WRB to gloss"
    assert line(elapsed(tmp_path, {"wrb": {"kind": "felt"}}), "t") == 108 + 12 + 5.5
    twice = elapsed(tmp_path, {"wrb": {"kind": "fluid_applied", "dry_hours": 24, "coats": 2}})
    assert line(twice, "t") == 2 * 24 + 108 + 12 + 5.5
    assert any(note.startswith("Each coat of the WRB") for note in twice.notes)


def test_a_panel_recoated_on_the_mockup_dries_once_more(tmp_path: Path) -> None:
    # The gloss dries 24 h by default; it is recoated when dry and dries again before the sealant.
    shown = {"includes": ["recoat_patch", "sealant_joint"]}
    made = elapsed(tmp_path, mockup=shown, sealants={"S1": {"pull_cure_days": 7}})
    assert line(made, "t") == 108 + 12 + 5.5 + 24 + 7 * 24


def test_a_wall_that_the_mockup_does_not_show_waits_for_nothing_on_it(tmp_path: Path) -> None:
    shown = {"walls": ["W2"], "includes": ["recoat_patch"]}
    second = merged(PROJECT["walls"]["W1"], {"attachment": {"method": "adhesive_full_bed"}})
    change = merged(PROJECT, {"walls": {"W2": second}, "mockup": shown})
    ask = resolver_of(tmp_path, change)
    assert line(ask(("walls", "W1"), "minimum-elapsed"), "t") == 108 + 12 + 5.5
    assert line(ask(("walls", "W2"), "minimum-elapsed"), "t") == 108 + 12 + 5.5 + 24


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
