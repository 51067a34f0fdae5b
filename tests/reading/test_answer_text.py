"""What a person writes into a cell, and what a program makes of it, becomes the text of a value or is told."""

import datetime
from pathlib import Path
from typing import Any

import pytest

from specgen.model.project import Project
from specgen.model.value_text import words
from specgen.reading.answer_text import NO_ANSWER, read_answer
from specgen.reading.conversion import InvalidValue
from specgen.reading.grid import Cell
from specgen.reading.schema import project_schema
from tests.support import project_of

WIDTH, THICKNESS, KIND = "joints.*.width", "walls.*.insulation.thickness", "walls.*.insulation.kind"
SHARE, SIGNED, COUNT = "primer.transfer_efficiency", "attachments.*.signed", "contract.witness_notice_hours"
DAY, CLOCK, COVERS, TITLE = (
    "attachments.*.issued_on",
    "climate.months.*.from",
    "attachments.*.covers",
    "attachments.*.title",
)


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> Project:
    change = {"elevations": {"E1": {"name": "South face"}}, "attachments": {"A1": {"kind": "letter"}}}
    return project_of(tmp_path_factory.mktemp("project"), change)


def read(project: Project, path: str, value: Any, unit: str = "", **more: Any) -> Any:
    cell = value if isinstance(value, Cell) else Cell(value, **more)
    return read_answer(cell, project_schema().fields[tuple(path.split("."))], project, unit)


@pytest.mark.parametrize(
    ("path", "cell", "unit", "entries"),
    [
        (WIDTH, Cell("3/4 in"), "in", ("3/4 in",)),
        (WIDTH, Cell("  3/4\u00a0 in \n"), "in", ("3/4 in",)),
        (WIDTH, Cell("""5'-6\""""), "in", ("""5'-6\"""",)),
        (WIDTH, Cell(0.75), "in", ("0.75 in",)),
        (WIDTH, Cell(1.0), "in", ("1 in",)),
        (WIDTH, Cell(0.1 + 0.2), "in", ("0.3 in",)),
        (WIDTH, Cell("3/4"), "in", ("3/4 in",)),
        (WIDTH, Cell(20.0, '0.0" mm"'), "", ("20 mm",)),
        (WIDTH, Cell(20.0, "0.0"), "", ("20",)),
        (SHARE, Cell(0.65, "0%"), "", ("65%",)),
        (SHARE, Cell(0.655, "0.0%"), "", ("65.5%",)),
        (SHARE, Cell(65.0), "", ("65",)),
        (SHARE, Cell("65 %"), "", ("65 %",)),
        (SIGNED, Cell(True), "", ("yes",)),
        (SIGNED, Cell("Yes"), "", ("yes",)),
        (COUNT, Cell("48 hours"), "", ("48",)),
        (COUNT, Cell("2 days"), "", ("48",)),
        (COUNT, Cell("90 min"), "", ("1 1/2",)),
        ("mockup.duration_days", Cell("2 weeks"), "", ("14",)),
        ("primer.coats", Cell("2 coats"), "", ("2",)),
        ("primer.coats", Cell("two"), "", ("2",)),
        (SHARE, Cell("35 percent"), "", ("35%",)),
        ("primer.release_moisture", Cell("12%"), "", ("12",)),
        ("primer.release_moisture", Cell("12 or less"), "", ("12 or less",)),
        (COUNT, Cell("60 to 100"), "", ("60 to 100",)),
        (SIGNED, Cell("Y"), "", ("yes",)),
        (SIGNED, Cell("No."), "", ("no",)),
        (DAY, Cell("11/20/2026"), "", ("2026-11-20",)),
        (DAY, Cell("13/4/2027"), "", ("2027-04-13",)),
        (DAY, Cell("April 12, 2027"), "", ("2027-04-12",)),
        (DAY, Cell("Mon., Apr. 12th 2027"), "", ("2027-04-12",)),
        (DAY, Cell("4-Mar-27"), "", ("2027-03-04",)),
        (DAY, Cell("2027-3-4"), "", ("2027-03-04",)),
        (DAY, Cell("2027/03/04"), "", ("2027-03-04",)),
        (WIDTH, Cell("2 1/2 in."), "", ("2 1/2 in",)),
        (COVERS, Cell("gloss & primer"), "", ("gloss", "primer")),
        (COUNT, Cell(48.0), "", ("48",)),
        (DAY, Cell(datetime.datetime(2027, 2, 1)), "", ("2027-02-01",)),
        (DAY, Cell("2027-02-01"), "", ("2027-02-01",)),
        (KIND, Cell("EPS"), "", ("eps",)),
        (COVERS, Cell("gloss, primer"), "", ("gloss", "primer")),
        (COVERS, Cell("[gloss; primer]"), "", ("gloss", "primer")),
        (COVERS, Cell("gloss\nprimer"), "", ("gloss", "primer")),
        (COVERS, Cell("none"), "", ()),
        (TITLE, Cell(3.0), "", ("3",)),
        (TITLE, Cell("a,  b"), "", ("a, b",)),
        ("joints.*.elevation", Cell("e1 south FACE"), "", ("E1",)),
        ("joints.*.elevation", Cell("E1"), "", ("E1",)),
    ],
)
def test_what_is_plain_is_taken_as_meant(
    project: Project, path: str, cell: Cell, unit: str, entries: tuple[str, ...]
) -> None:
    assert read(project, path, cell, unit).entries == entries


@pytest.mark.parametrize("word", ["", " ", "?", "n/a", "N/A", "tbd", "TBD", "-", "\u2014", "unknown", "\u00a0"])
def test_what_says_that_nothing_is_known_is_no_answer(project: Project, word: str) -> None:
    assert read(project, WIDTH, word, "in") is None


def test_an_empty_cell_is_no_answer(project: Project) -> None:
    assert read(project, WIDTH, None) is None


def test_no_choice_of_any_field_reads_as_no_answer() -> None:
    choices = {words(value).casefold() for field in project_schema().fields.values() for value in field.values}
    assert {"eps", "glass-mat gypsum", "none"} <= choices
    assert not choices & NO_ANSWER


def test_a_value_of_a_formula_and_a_unit_that_is_added_are_told(project: Project) -> None:
    found = read(project, WIDTH, Cell(0.75, formula=True), "in")
    assert found.notes == ("a formula; its value 0.75 is taken", "taken as 0.75 in, in the unit that was asked for")


@pytest.mark.parametrize(
    ("path", "cell", "message", "hint"),
    [
        (WIDTH, Cell(datetime.datetime(2027, 3, 4)), "the cell holds a date, 2027-03-04", "such as 3/4 in"),
        (WIDTH, Cell(datetime.time(5, 6)), "the cell holds a time of day, 05:06", "as text"),
        (WIDTH, Cell("4-Mar"), "makes of a size that it takes for a date", "apostrophe"),
        (WIDTH, Cell("Mar-04"), "makes of a size that it takes for a date", "apostrophe"),
        (TITLE, Cell(datetime.datetime(2027, 3, 4)), "the cell holds a date", "such as 3/4 in"),
        (WIDTH, Cell(None, formula=True), "a formula without a value", "write the value itself"),
        (WIDTH, Cell("#REF!", error=True), "the error #REF!", "write the value itself"),
        (TITLE, Cell("a\u202eb"), "U+202E", "delete it"),
        (TITLE, Cell("see attached"), "says where to look", "write the value itself"),
        (WIDTH, Cell("Per plans."), "says where to look", "write the value itself"),
        (DAY, Cell("2027-02-30"), "is not a date", "2027-03-01"),
        (DAY, Cell("March 2027"), "is not a date", "year-month-day"),
    ],
)
def test_what_is_not_plain_is_told_with_what_to_write(
    project: Project, path: str, cell: Cell, message: str, hint: str
) -> None:
    with pytest.raises(InvalidValue) as invalid:
        read(project, path, cell, "in")
    assert message in invalid.value.message
    assert hint in invalid.value.hint


def test_in_a_metric_project_day_and_month_are_asked_back_where_both_may_be_meant(tmp_path: Path) -> None:
    metric = project_of(tmp_path, {"package": {"units": "si"}})
    assert read(metric, DAY, "13/4/2027").entries == ("2027-04-13",)
    with pytest.raises(InvalidValue) as invalid:
        read(metric, DAY, "3/4/2027")
    assert invalid.value.hint == "write 2027-03-04 or 2027-04-03"
