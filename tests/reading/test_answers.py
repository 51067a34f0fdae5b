"""What an answer has given is its value as long as the project has that value; the list never refuses a file."""

from pathlib import Path

import pytest

from specgen.model.project import Project
from tests.support import project_of

ANSWER = {"party": "eifs_source", "by": "L. Ferrow", "on": "2027-02-01", "sheet": "eifs.xlsx"}
KIND, COVERS = "walls.W1.substrate.kind", "attachments.A1.covers"


def read(folder: Path, *listed: list[str], **more: object) -> Project:
    answers = {f"Q{number}": ANSWER | {"fields": fields} for number, fields in enumerate(listed, 1)}
    return project_of(folder, {"answers": answers, **more})


@pytest.mark.parametrize("text", ["concrete", "Concrete"])
def test_a_value_that_is_the_one_answered_stands(text: str, tmp_path: Path) -> None:
    walls = {"W1": {"substrate": {"kind": "concrete"}}}
    told = read(tmp_path, [f"{KIND} = {text}"], walls=walls).answered
    assert [(".".join(path), one.answer, one.stands) for path, one in told.items()] == [(KIND, "Q1", True)]


def test_a_value_that_was_changed_since_does_not_stand(tmp_path: Path) -> None:
    walls = {"W1": {"substrate": {"kind": "concrete"}}}
    told = read(tmp_path, [f"{KIND} = osb"], walls=walls).answered
    assert [(one.text, one.stands) for one in told.values()] == [("osb", False)]


def test_an_answer_for_each_member_stands_where_the_member_has_the_value(tmp_path: Path) -> None:
    walls = {"W1": {"substrate": {"kind": "concrete"}}, "W2": {"substrate": {"kind": "osb"}}, "W3": {}}
    told = read(tmp_path, ["walls.*.substrate.kind = concrete"], walls=walls).answered
    assert {path[1]: one.stands for path, one in told.items()} == {"W1": True, "W2": False}


def test_a_list_is_held_entry_by_entry(tmp_path: Path) -> None:
    papers = {"A1": {"kind": "letter", "covers": ["gloss", "primer"]}}
    told = read(tmp_path, [f"{COVERS} = [gloss, primer]"], attachments=papers).answered
    assert [one.stands for one in told.values()] == [True]


def test_what_is_no_longer_given_or_was_renamed_is_let_go(tmp_path: Path) -> None:
    told = read(tmp_path, ["walls.W9.substrate.kind = osb", "walls.W1.insulation.flame_spread = 20", KIND, "x"])
    assert [one.stands for one in told.answered.values()] == [False]


def test_of_two_answers_for_a_field_the_one_whose_value_stands_counts(tmp_path: Path) -> None:
    walls = {"W1": {"substrate": {"kind": "concrete"}}}
    told = read(tmp_path, [f"{KIND} = concrete"], [f"{KIND} = osb"], walls=walls).answered
    assert [(one.answer, one.stands) for one in told.values()] == [("Q1", True)]


@pytest.mark.parametrize(
    ("change", "days"),
    [
        ({"schedule": {"work_start": "2027-05-17"}}, 89),
        ({"package": {"date": "2027-03-01"}}, 12),
        ({"schedule": {"work_start": "2027-02-01"}}, None),
        ({}, None),
    ],
)
def test_an_age_is_counted_from_the_day_of_completion(
    change: dict[str, object], days: int | None, tmp_path: Path
) -> None:
    walls = {"walls": {"W1": {"substrate": {"kind": "concrete", "completed_on": "2027-02-17"}}}}
    project = project_of(tmp_path, change | walls)
    assert project.get(("walls", "W1", "substrate", "age_days")) == days


def test_an_age_that_is_told_stands(tmp_path: Path) -> None:
    substrate = {"kind": "concrete", "completed_on": "2027-02-17", "age_days": 30}
    project = project_of(
        tmp_path, {"walls": {"W1": {"substrate": substrate}}, "schedule": {"work_start": "2027-05-17"}}
    )
    assert project.get(("walls", "W1", "substrate", "age_days")) == 30
