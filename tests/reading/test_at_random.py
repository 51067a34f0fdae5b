"""Projects drawn at random from the schema are read: what the schema allows is refused nowhere."""

from pathlib import Path

import pytest

from specgen import pipeline
from tests.projects_at_random import SHARES, count_values, draw_project
from tests.support import written

SEEDS = range(100)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_project_drawn_at_random_is_read(seed: int, tmp_path: Path) -> None:
    drawn = draw_project(seed)
    project = pipeline.read(written(tmp_path, drawn))
    # Each value is a field of the project, or an entry of a list that is one.
    assert len(project.values) <= count_values(drawn)
    assert project.value(("package", "units")) == drawn["package"]["units"]


def test_a_seed_draws_the_same_again() -> None:
    assert draw_project(7) == draw_project(7)
    assert draw_project(7) != draw_project(8)


def test_draws_differ_in_units_and_in_how_much_they_give() -> None:
    drawn = [draw_project(seed) for seed in SEEDS]
    assert {one["package"]["units"] for one in drawn} == {"ip", "si"}
    numbers = sorted(map(count_values, drawn))
    assert numbers[0] < 20
    assert numbers[-1] > 500
    assert len(SHARES) > 1
