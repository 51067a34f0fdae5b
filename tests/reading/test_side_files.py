"""Side files: which kind a file is, marks that point from one file into another, and a side file by itself."""

from pathlib import Path
from typing import Any

import pytest

from specgen import pipeline
from specgen.model.problem import Refused
from specgen.reading.schema import project_schema
from specgen.reading.side_file import SideFile, SideFileGiven, look_through
from specgen.reading.side_files import find_home
from tests.support import case_of, merged, written

FIRM = """\
people:
  P1: {name: A. Reed, role: sprayer, employer: Own, crew: gray}
"""
SUBMITTAL = {"package": {"purpose": "mockup_submittal"}, "firm": "firm.yaml"}


@pytest.mark.parametrize(
    ("sections", "home"),
    [
        (["format", "people"], "firm"),
        (["people", "attachments", "crews"], "firm"),
        (["guns", "peple"], "firm"),
        (["panel_limits", "gloss"], "coating_system"),
        (["format", "attachments", "primer"], "coating_system"),
        (["log"], "record"),
        (["project", "people"], ""),
        (["package", "primer"], ""),
        (["walls"], ""),
        (["attachments"], ""),
        (["crews"], ""),
        (["format"], ""),
        (["people", "primer"], ""),
        ([], ""),
    ],
)
def test_a_side_file_is_told_apart_by_its_sections(sections: list[str], home: str) -> None:
    assert find_home(sections, project_schema()) == home


def given(folder: Path, text: str) -> SideFile:
    with pytest.raises(SideFileGiven) as raised:
        pipeline.read(written(folder, text, "firm.yaml"))
    return look_through(raised.value, project_schema())


def test_a_side_file_in_place_of_a_project_is_refused_as_what_it_is(tmp_path: Path) -> None:
    with pytest.raises(Refused) as raised:
        pipeline.read(written(tmp_path, FIRM, "firm.yaml"))
    (problem,) = raised.value.problems
    assert (problem.file, problem.message) == ("firm.yaml", "this is a firm file, not a project file")


def test_a_side_file_by_itself_says_which_marks_a_project_must_have(tmp_path: Path) -> None:
    side = given(tmp_path, FIRM)
    assert (side.name, side.home) == ("firm.yaml", "firm")
    assert side.sought == {("people", "P1", "crew"): "gray"}
    assert len(side.given.values) == 4


# Text of a firm file, the place of its fault, message and remedy where they are of interest.
FAULTY = [
    (
        FIRM + "crews:\n  grey: {size: 3}\n",
        2,
        "people.P1.crew",
        "there is no crew 'gray'",
        "did you mean grey?",
    ),
    (FIRM + "  P2: {role: sprayr}\n", 3, "people.P2.role", "'sprayr' is not a choice for this field", None),
    (FIRM + "primr: 3\n", 3, "primr", None, None),
    (FIRM + "safety:\n  rules: us_osha\n", 4, "safety.rules", "this belongs in the project file, not here", None),
    (FIRM + "  P2: {years: 3, years_on_system: 5}\n", 3, "people.P2.years", None, None),
]


@pytest.mark.parametrize(
    ("text", "line", "path", "message", "hint"),
    FAULTY,
)
def test_the_faults_of_a_side_file_are_told_by_its_own_lines(
    text: str, line: int, path: str, message: str | None, hint: str | None, tmp_path: Path
) -> None:
    with pytest.raises(Refused) as raised:
        given(tmp_path, text)
    (problem,) = raised.value.problems
    assert (problem.file, problem.line, problem.path) == ("firm.yaml", line, path)
    assert message in (None, problem.message)
    assert hint in (None, problem.hint)


def opened(folder: Path, firm: str, change: Any = None) -> dict[str, str]:
    """The open items of a small job with this firm file, by path with their words."""
    written(folder, firm, "firm.yaml")
    case = case_of(folder, merged(SUBMITTAL, change or {}))
    return {item.path: item.label for item in case.judgment.open_items}


@pytest.mark.parametrize("home", ["firm", "coating_system"])
def test_a_side_file_that_is_named_and_not_there_is_told_how_to_begin(home: str, tmp_path: Path) -> None:
    with pytest.raises(Refused) as raised:
        case_of(tmp_path, {home: "ours.yaml"})
    (problem,) = raised.value.problems
    assert (problem.path, problem.file) == (f"{home}: ours.yaml", "project.yaml")
    assert problem.hint == f"check name and folder, or begin it by: specgen new ours.yaml --file {home}"


def test_a_crew_that_the_job_does_not_have_yet_is_an_open_item(tmp_path: Path) -> None:
    items = opened(tmp_path, FIRM)
    assert items["people.P1.crew"] == "Crew of the person: there is no crew 'gray'; no crews are given"
    items = opened(tmp_path, FIRM, {"crews": {"grey": {"steps": ["gloss"]}}})
    assert items["people.P1.crew"] == "Crew of the person: there is no crew 'gray'; did you mean grey?"
    assert "people.P1.crew" not in opened(tmp_path, FIRM, {"crews": {"gray": {"steps": ["gloss"]}}})


def test_a_mark_of_a_project_file_that_finds_nothing_stays_a_fault(tmp_path: Path) -> None:
    with pytest.raises(Refused) as raised:
        opened(tmp_path, FIRM, {"mockup": {"crew": ["gray"]}})
    assert [problem.path for problem in raised.value.problems] == ["mockup.crew"]


def test_a_mark_that_may_be_left_out_is_not_taken_for_left_out_where_it_finds_nothing(tmp_path: Path) -> None:
    """A letter that names no colors holds for all; one that names a color of another job holds for none of these."""
    firm = FIRM + "attachments:\n  L1: {kind: letter, title: Letter, colors: [C9]}\n"
    assert opened(tmp_path, firm)["attachments.L1.colors"].endswith("there is no color 'C9'; no colors are given")
    project = case_of(tmp_path, SUBMITTAL).project
    assert project.get(("attachments", "L1", "colors")) is None
    written(tmp_path, firm.replace(", colors: [C9]", ""), "firm.yaml")
    assert case_of(tmp_path, SUBMITTAL).project.get(("attachments", "L1", "colors")) == ()


def test_crews_may_stand_in_the_firm_file_and_then_in_no_other(tmp_path: Path) -> None:
    firm = FIRM + "crews:\n  gray: {steps: [gloss], size: 3}\n"
    assert "people.P1.crew" not in opened(tmp_path, firm, {"mockup": {"crew": ["gray"]}})
    with pytest.raises(Refused) as raised:
        opened(tmp_path, firm, {"crews": {"red": {}}})
    assert "this stands also in project.yaml" in raised.value.problems[0].message


def test_a_section_that_stands_empty_in_the_project_is_given_by_the_firm(tmp_path: Path) -> None:
    written(tmp_path, "tank: {volume: 5 gal}\n", "firm.yaml")
    case = case_of(tmp_path, merged(SUBMITTAL, {"tank": {"volume": None}}))
    assert ("tank", "volume") in case.project.values
