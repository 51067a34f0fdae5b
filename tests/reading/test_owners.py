"""Who must give each field, held against `owners.yaml`: common practice of the trade, no source."""

from pathlib import Path

import pytest
import yaml

from specgen.model.field import Field, dotted_path
from specgen.reading.schema import project_schema

SCHEMA = project_schema()
STATED = yaml.load((Path(__file__).parent / "owners.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader)
OWNER_OF = {path: owner for owner, paths in STATED.items() for path in paths}


def owner_of(path: tuple[str, ...]) -> str:
    """The owner that the longest stated beginning of a path names; the applicator's where none is stated."""
    beginnings = (".".join(path[:length]) for length in range(len(path), 0, -1))
    return next((OWNER_OF[path] for path in beginnings if path in OWNER_OF), "applicator")


@pytest.mark.parametrize("made", SCHEMA.fields.values(), ids=lambda made: dotted_path(made.path))
def test_a_field_is_owed_by_the_one_who_knows_it(made: Field) -> None:
    assert made.owed_by == owner_of(made.path)


def test_every_path_stated_is_one_of_a_field_and_stated_once() -> None:
    assert len(OWNER_OF) == sum(map(len, STATED.values()))
    for path in OWNER_OF:
        parts = tuple(path.split("."))
        assert any(made[: len(parts)] == parts for made in SCHEMA.fields), path
