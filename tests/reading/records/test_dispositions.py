"""Dispositions in a table and on a filled form; the report's form is filled in by a library of its own."""

import datetime
import io
from pathlib import Path

import pikepdf

from specgen import pipeline
from specgen.documents.context import DocumentContext
from specgen.model.record import EntryPlace
from specgen.output.record_files import make_record_files
from specgen.reading.records.row_names import name_answer_row, read_answer_row
from tests.reading.records.faulty import TABLES
from tests.reading.records.support import read
from tests.support import EXAMPLES

SEASON = EXAMPLES / "season" / "project.yaml"
TABLE = """clause,date,elevation,area,decision,by,decided_on,note
WEA-01c,2027-06-15,E1,left bay,Accepted as is,L. Novak,6/17/2027,viewed at 10 ft
"""


def test_a_table_of_dispositions_is_known_by_its_columns(tmp_path: Path) -> None:
    (entry,) = read(tmp_path, TABLE).of("disposition")
    assert entry.values == {
        "clause": "WEA-01c",
        "date": datetime.date(2027, 6, 15),
        "elevation": "E1",
        "area": "left bay",
        "decision": "accepted_as_is",
        "by": "L. Novak",
        "decided_on": datetime.date(2027, 6, 17),
        "note": "viewed at 10 ft",
    }


def test_a_decision_that_is_none_is_told_at_its_cell(tmp_path: Path) -> None:
    records = read(tmp_path, TABLES["a decision that is none"])
    assert "recoated" in " ".join(map(str, records.faults))


def test_a_name_of_a_row_is_read_back_and_stays_short() -> None:
    place = EntryPlace("records/june.csv", 31)
    assert read_answer_row(name_answer_row("WEA-01e", place)) == {"clause": "WEA-01e", "row": "31", "file": "june.csv"}
    long = name_answer_row("WEA-01e", EntryPlace("the-weather-of-the-north-face-in-june.csv", 31))
    assert len(f"disposition.decided_on.{long}") <= 64
    assert read_answer_row(long)["file"].startswith("*")


def test_the_form_of_the_report_comes_back_as_dispositions(tmp_path: Path) -> None:
    case = pipeline.judge_project(pipeline.read_with_records(SEASON, []))
    context = DocumentContext(case.project, case.context.standards, case.judgment, case.context.resolve)
    files = make_record_files(context, case.records, ("pdf",))
    content = files["D21-nonconformance-report-form.pdf"]
    row = "FIN-05h@14@pails%2Ecsv"
    values = {
        f"disposition.decision.{row}.recoated": pikepdf.Name("/Yes"),
        f"disposition.by.{row}": pikepdf.String("L. Novak"),
        f"disposition.decided_on.{row}": pikepdf.String("2027-11-12"),
    }
    with pikepdf.open(io.BytesIO(content)) as opened:
        fill(opened.Root.AcroForm.Fields, (), values)
        opened.save(tmp_path / "answer.pdf")
    assert not values
    again = pipeline.judge_project(pipeline.read_with_records(SEASON, [tmp_path / "answer.pdf"]))
    (settled,) = [one for one in again.records.nonconformances if one.code == "FIN-05h"]
    assert settled.is_settled
    assert again.records.unmatched == ()


def fill(fields: object, above: tuple[str, ...], left: dict[str, pikepdf.Object]) -> None:
    """Fill in the fields of these names."""
    for field in fields:  # type: ignore[attr-defined]
        name = (*above, str(field["/T"]))
        if "/Kids" in field:
            fill(field.Kids, name, left)
        elif ".".join(name) in left:
            field["/V"] = left.pop(".".join(name))
