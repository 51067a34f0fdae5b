"""What an answer is said to have given must stand in the project; one answer alone gives it."""

from pathlib import Path

import pytest

from specgen.model.problem import Refused
from tests.support import project_of

ANSWER = {"party": "eifs_source", "by": "L. Ferrow", "on": "2027-02-01", "sheet": "eifs.xlsx"}


def problems(folder: Path, *listed: list[str]) -> list[str]:
    answers = {f"Q{number}": ANSWER | {"fields": fields} for number, fields in enumerate(listed, 1)}
    with pytest.raises(Refused) as refused:
        project_of(folder, {"answers": answers})
    return [str(problem) for problem in refused.value.problems]


def test_an_answer_that_lists_what_is_there_is_read(tmp_path: Path) -> None:
    project = project_of(tmp_path, {"answers": {"Q1": ANSWER | {"fields": ["walls.W1.substrate.kind"]}}})
    assert project.get(("answers", "Q1", "fields")) == ("walls.W1.substrate.kind",)


def test_a_field_that_is_absent_or_unknown_is_told_once_with_its_line(tmp_path: Path) -> None:
    told = problems(tmp_path, ["walls.W1.substrate.kind", "walls.W1.insulation.flame_spread"])
    assert len(told) == 1
    assert told[0].startswith("project.yaml:")
    assert "answers.Q1.fields.1: 'walls.W1.insulation.flame_spread' is no value that the project gives" in told[0]
    assert "give it, or take it out of the list" in told[0]
    assert "did you mean walls.W1.substrate.kind?" in problems(tmp_path, ["walls.W1.substrate.knd"])[0]


def test_a_field_that_two_answers_list_is_told_once(tmp_path: Path) -> None:
    told = problems(tmp_path, ["walls.W1.substrate.kind"], ["walls.W1.substrate.kind"])
    assert len(told) == 1
    assert "walls.W1.substrate.kind is listed by the answer Q1 too (list it once)" in told[0]
