"""Projects drawn at random from the schema are read: what the schema allows is refused nowhere."""

import shutil
from pathlib import Path

import pytest

from specgen import pipeline
from specgen.reading.positions import read_text
from tests.projects_at_random import SHARES, count_values, draw_project, thin_out
from tests.support import EXAMPLES, written

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


@pytest.mark.parametrize("share", [0, 0.5, 0.9])
@pytest.mark.parametrize("example", ["clean", "metric", "stops"])
def test_an_example_is_read_whatever_fields_are_left_away(example: str, share: float, tmp_path: Path) -> None:
    shutil.copytree(EXAMPLES / example, tmp_path, dirs_exist_ok=True)
    # Read as the program reads it, since what an example takes in from elsewhere in its file counts as well.
    whole = read_text(tmp_path / "project.yaml", "project.yaml").data
    for seed in range(5):
        thin = thin_out(whole, seed, share)
        assert count_values(thin) < count_values(whole)
        assert pipeline.read(written(tmp_path, thin))


@pytest.mark.parametrize("seed", SEEDS[:10])
def test_a_drawn_project_is_read_whatever_fields_are_left_away(seed: int, tmp_path: Path) -> None:
    assert pipeline.read(written(tmp_path, thin_out(draw_project(seed), seed, 0.5)))
