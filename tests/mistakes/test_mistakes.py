"""Each mistake of the table is taken as it is meant, or told with its line and with what is right."""

from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.model.problem import Refused
from specgen.model.project import Project
from tests.mistakes.table import LAST_SINGLE, SOUND, Mistake, mistakes

TABLE = mistakes()
TOLD = [one for one in TABLE if one.told]
TAKEN = [one for one in TABLE if not one.told]


def named(rows: list[Mistake]) -> list[Any]:
    return [pytest.param(row, id=f"{row.number} {row.about}") for row in rows]


def read(folder: Path, content: bytes) -> Project:
    (folder / "project.yaml").write_bytes(content)
    return pipeline.read(folder / "project.yaml")


def test_the_sound_file_is_sound(tmp_path: Path) -> None:
    assert read(tmp_path, SOUND.encode()).value(("project", "name")) == "Millrace Pump House"


@pytest.mark.parametrize("mistake", named(TOLD))
def test_a_mistake_is_told_at_its_line_with_what_is_right(mistake: Mistake, tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        read(tmp_path, mistake.content)
    told = [(one.line, one.path, one.message, one.hint) for one in refused.value.problems]
    assert told == [tuple(one) for one in mistake.told]


@pytest.mark.parametrize("mistake", named(TAKEN))
def test_what_can_mean_one_thing_only_is_taken_for_it(mistake: Mistake, tmp_path: Path) -> None:
    taken, meant = read(tmp_path, mistake.content), read(tmp_path, mistake.meant)
    assert taken.values == meant.values
    assert taken.members == meant.members


def test_of_110_single_mistakes_at_least_95_are_taken_as_meant_or_told_with_line_and_remedy() -> None:
    single = {one.count for one in TABLE if one.count <= LAST_SINGLE}
    answered = {one.count for one in TABLE if all(said.line and said.right for said in one.told)}
    assert len(single) >= 109
    assert len(single & answered) >= 95


# A slip of the pen in a unit, a choice, a name and a mark, and a code named with its edition.
SLIPS = {"2", "41", "42", "97", "102", "132"}


def test_only_what_was_meant_is_offered_and_nothing_that_is_merely_alike() -> None:
    offers = {one.number for one in TABLE if any("did you mean" in said.right for said in one.told)}
    assert offers == SLIPS
