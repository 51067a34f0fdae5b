"""Empty records: what is written is read back, with nothing in it, and with what is filled in."""

import csv
import io
from pathlib import Path

import openpyxl
import pytest

from specgen.asking.blank_record import KINDS
from specgen.commands import DONE
from specgen.commands._record_blank import show_blank
from specgen.model.problem import Refused
from specgen.reading.records.given import read_given
from specgen.reading.records.reading import survey_records
from tests.reading.records.support import site_of
from tests.support import EXAMPLES

# The columns of each kind, and the collection that they fill: retyped from the fields of the records.
COLUMNS = {
    "weather": ("log", 14, "air (F)"),
    "spray": ("log", 23, "wet_film (mil)"),
    "pails": ("log", 16, "water_added (fl oz)"),
    "release": ("release", 11, "hours_dry"),
    "inspection": ("inspection", 5, "done_on"),
    "mockup": ("result", 6, "criterion"),
}


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("ending", ["csv", "yaml", "xlsx"])
def test_an_empty_record_is_read_back_without_an_entry_or_a_fault(kind: str, ending: str, tmp_path: Path) -> None:
    project = site_of(tmp_path)
    file = tmp_path / f"blank.{ending}"
    assert show_blank(kind, str(tmp_path / "project.yaml"), str(file)).code == DONE
    records = survey_records(project, [read_given(file, file.name)]).records
    assert (records.faults, records.remarks) == ((), ())
    assert not any(records.entries.values())


@pytest.mark.parametrize("kind", COLUMNS)
def test_the_columns_of_a_kind_are_known_by_the_reader_when_they_are_filled_in(kind: str, tmp_path: Path) -> None:
    collection, count, title = COLUMNS[kind]
    (head,) = csv.reader(io.StringIO(show_blank(kind, None, None).text))
    assert (len(head), title in head) == (count, True)
    schema = site_of(tmp_path).schema
    examples = {path[-1]: field.example for path, field in schema.fields.items() if path[0] == collection}
    refers = {"elevation": "E1", "crew": "red", "cup": "CUP-1"}
    values = {name: refers.get(name, examples[name]) for name in (cell.partition(" (")[0] for cell in head)}
    stream = io.StringIO()
    csv.writer(stream).writerows([head, list(values.values())])
    (tmp_path / "log.csv").write_text(stream.getvalue())
    records = survey_records(site_of(tmp_path), [read_given(tmp_path / "log.csv", "log.csv")]).records
    assert records.faults == ()
    assert set(records.of(collection)[0].values) == set(values)


def test_a_workbook_offers_the_marks_of_the_project_and_its_rows_are_read(tmp_path: Path) -> None:
    site_of(tmp_path)
    file = tmp_path / "pails.xlsx"
    show_blank("pails", str(tmp_path / "project.yaml"), str(file))
    book = openpyxl.load_workbook(file)
    page = book["log"]
    head = {cell.value: cell.column for cell in page[1]}
    offered = {next(iter(rule.sqref.ranges)).min_col: rule.formula1 for rule in page.data_validations.dataValidation}
    column, _, rows = offered[head["elevation"]].partition("$")[2].partition("$")
    assert [book["Choices"][f"{column}{row}"].value for row in (1, 2, 3)] == ["E1", "E2", "E3"]
    assert rows.startswith("1:")
    for name, value in (
        ("date", "2027-06-15"),
        ("elevation", "E2"),
        ("pail", "3"),
        ("cup", "CUP-1"),
        ("water (%)", "6"),
    ):
        page.cell(2, head[name]).value = value
    book.save(file)
    records = survey_records(site_of(tmp_path), [read_given(file, file.name)]).records
    assert [entry.get("elevation") for entry in records.of("log")] == ["E2"]
    assert not records.faults


def test_units_and_marks_are_those_of_the_project(tmp_path: Path) -> None:
    text = show_blank("weather", str(EXAMPLES / "metric" / "project.yaml"), None).text
    assert '"air (C)"' in text
    assert '"wind (m/s)"' in text
    file = tmp_path / "blank.yaml"
    show_blank("inspection", str(EXAMPLES / "clean" / "project.yaml"), str(file))
    assert "    # E1, E2, E3\n" in file.read_text()


def test_a_file_that_is_there_is_not_overwritten_and_an_unknown_kind_or_ending_is_told(tmp_path: Path) -> None:
    file = tmp_path / "blank.csv"
    file.write_text("mine")
    for call, message in (
        (("weather", None, str(file)), "the file exists and is not overwritten"),
        (("wether", None, None), "there is no record 'wether'"),
        (("weather", None, str(tmp_path / "b.doc")), "an empty record is not written as"),
    ):
        with pytest.raises(Refused) as refused:
            show_blank(*call)
        assert refused.value.problems[0].message.startswith(message)
    assert file.read_text() == "mine"


def test_the_settings_that_a_csv_file_cannot_hold_are_told(tmp_path: Path) -> None:
    messages = show_blank("mockup", None, str(tmp_path / "m.csv")).messages
    assert messages[1] == "left out: the settings of the accepted mockup, which a .yaml or .xlsx file holds"
