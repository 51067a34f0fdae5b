"""How long warmth and dryness must last behind a step: 24 h, or its drying where that is longer."""

from pathlib import Path
from typing import Any

import pytest

from specgen.model.source import Kind
from specgen.standards import load_standards
from specgen.weather.hold import Hold, find_hold
from tests.support import project_of


def hold(folder: Path, step: str, change: Any = None, wall: str = "") -> Hold:
    return find_hold(project_of(folder, change), load_standards(), step, (wall,))


def test_a_coat_that_dries_longer_than_a_day_is_kept_warm_as_long_as_it_dries(tmp_path: Path) -> None:
    # 24 h: common practice, no source. 36 h are the manufacturer's, as the project gives them.
    found = hold(tmp_path, "gloss", {"gloss": {"dry_hours": 36}})
    assert (found.hours, found.source.kind, found.source.reference) == (36, Kind.PROJECT, "gloss.dry_hours")


def test_a_coat_that_dries_sooner_is_kept_warm_for_a_day_all_the_same(tmp_path: Path) -> None:
    found = hold(tmp_path, "gloss", {"gloss": {"dry_hours": 16}})
    assert (found.hours, found.source.kind) == (24, Kind.PRACTICE)


@pytest.mark.parametrize(("step", "hours"), [("setup", 24), ("aesthetic_joints", 24), ("sealant", 0)])
def test_a_step_behind_which_nothing_dries_is_held_as_is_usual(tmp_path: Path, step: str, hours: int) -> None:
    # Common practice, no source; a sealant once it is tooled bears rain.
    assert hold(tmp_path, step).hours == hours


def test_part_of_an_hour_counts_as_a_whole_one(tmp_path: Path) -> None:
    assert hold(tmp_path, "primer", {"primer": {"dry_hours": 30.5}}).hours == 31


def test_adhesive_is_held_as_long_as_it_cures_on_its_wall(tmp_path: Path) -> None:
    change = {"walls": {"W1": {"attachment": {"cure_hours": 72}}}}
    assert hold(tmp_path, "boards", change, "W1").hours == 72
