"""The sheet `Documents sent`: a row for each document that a party owes, and the attachments that it becomes."""

import io
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from tests.asking.workbooks import filled, saved_by_calc
from tests.running import Ended, run_main

JOB = """\
format: 1
package: {purpose: mockup_submittal}
project: {name: Trial, number: "0712"}
parties:
  eifs_source: {name: Graywether Wall Systems}
  finish_source: {name: Quillgloss Coating Works}
walls:
  W1:
    substrate: {kind: glass_mat_gypsum}
    wrb: {kind: fluid_applied}
    attachment: {method: adhesive_full_bed}
    insulation: {kind: eps, thickness: 3 in}
    base_coat: {class: PB}
attachments:
  A1: {kind: sds, covers: [adhesive], title: Adhesive, issued_on: 2026-02-10}
"""
HEAD = 3  # the row of the titles


@pytest.fixture
def job(tmp_path: Path) -> Path:
    file = tmp_path / "project.yaml"
    file.write_text(JOB, "utf-8")
    (tmp_path / "papers").mkdir()
    (tmp_path / "papers" / "board.pdf").write_bytes(b"%PDF-1.4")
    return file


@pytest.fixture
def sheet(job: Path, capsys: Any) -> bytes:
    assert run_main(capsys, "ask", str(job), "--party", "eifs_source", "--out", str(job.with_name("out"))).code == 0
    return (job.parent / "out" / "eifs-manufacturer.xlsx").read_bytes()


def rows_of(content: bytes) -> dict[str, dict[str, Any]]:
    """The rows by the name of the document, each by the titles of its columns."""
    page = openpyxl.load_workbook(io.BytesIO(content))["Documents sent"]
    titles, *rows = page.iter_rows(min_row=HEAD, values_only=True)
    return {row[1]: dict(zip(titles, row, strict=True)) for row in rows}


def with_rows(content: bytes, rows: dict[str, dict[str, Any]], party: str = "L. Ferrow") -> bytes:
    """The workbook with these cells entered in the rows of these documents, and signed."""

    def fill(book: Any) -> None:
        page = book["Documents sent"]
        titles = {cell.value: cell.column for cell in page[HEAD]}
        for row in page.iter_rows(min_row=HEAD + 1):
            for title, value in rows.get(row[1].value, {}).items():
                page.cell(row[1].row, titles[title]).value = value
        for row in book["Project"].iter_rows():
            if row[0].value in ("Answered by", "Date"):
                row[1].value = {"Answered by": party, "Date": "2027-02-01"}[row[0].value]

    return filled(content, fill)


def take(capsys: Any, job: Path, content: bytes) -> Ended:
    job.with_name("back.xlsx").write_bytes(content)
    ended = run_main(capsys, "take", str(job), str(job.with_name("back.xlsx")))
    return Ended(ended.code, *(text.replace(f"{job.parent}/", "") for text in (ended.out, ended.err)))


BOARD = {"Title": "Board data sheet", "Date of document": "2026-02-10", "File name": "board.pdf"}


def test_each_document_has_a_row_with_what_is_known_of_it(sheet: bytes) -> None:
    """Adhesive over a fluid-applied barrier on gypsum sheathing: sheets, letter and instructions; common practice."""
    rows = rows_of(sheet)
    assert {"Data sheet: adhesive", "Data sheet: board", "Letter: EIFS manufacturer and finish manufacturer"} <= set(
        rows
    )
    assert "Safety data sheet: adhesive" not in rows  # A1
    board = rows["Data sheet: board"]
    assert (board["Type"], board["Materials covered"], board["Title"]) == ("data sheet", "board", None)
    # A data sheet is marked; it is not signed, and names no project.
    assert (board["Signed"], board["Lines that apply marked"], board["Names this project"]) == ("-", None, "-")
    assert [row["Entry"].split(" ")[0] for row in rows.values()] == [f"EM{n}" for n in range(1, len(rows) + 1)]


def test_a_row_becomes_an_attachment_and_a_blank_one_does_not(job: Path, sheet: bytes, capsys: Any) -> None:
    entry = rows_of(sheet)["Data sheet: board"]["Entry"].split(" ")[0]
    ended = take(capsys, job, with_rows(sheet, {"Data sheet: board": BOARD | {"Lines that apply marked": "y"}}))
    assert ended.code == 0
    assert ended.out.splitlines()[:8] == [
        "back.xlsx: 6 answers of L. Ferrow, Graywether Wall Systems, 2027-02-01",
        f"  attachments.{entry}.kind: data_sheet",
        f"  attachments.{entry}.covers: [board]",
        f"  attachments.{entry}.title: Board data sheet",
        f"  attachments.{entry}.issued_on: 2026-02-10",
        f"  attachments.{entry}.file: papers/board.pdf",
        f"  attachments.{entry}.marked: yes",
        "",
    ]
    assert "found as papers/board.pdf" in ended.out
    assert job.read_text("utf-8").count("kind: data_sheet") == 1


def test_a_field_names_the_document_that_was_asked_for_it(job: Path, sheet: bytes, capsys: Any) -> None:
    name = next(one for one in rows_of(sheet) if "Instructions for the adhesive" in one)
    mark = rows_of(sheet)[name]["Entry"].split(" ")[0]
    ended = take(capsys, job, with_rows(sheet, {name: {"Title": "Adhesive", "File name": "glue.pdf"}}))
    assert ended.code == 0
    assert f"  walls.W1.attachment.instructions: {mark}" in ended.out.splitlines()
    assert f"  attachments.{mark}.kind: instructions\n" in ended.out


def test_rows_of_one_file_are_one_attachment_for_all_of_them(job: Path, sheet: bytes, capsys: Any) -> None:
    both = {"Data sheet: board": BOARD, "Data sheet: adhesive": BOARD}
    ended = take(capsys, job, with_rows(sheet, both))
    assert ended.code == 0
    assert ended.out.count(".title: Board data sheet") == 1
    assert ".covers: [adhesive, board]\n" in ended.out


def test_a_workbook_saved_by_a_spreadsheet_program_is_taken(
    job: Path, sheet: bytes, capsys: Any, tmp_path: Path
) -> None:
    (tmp_path / "calc").mkdir()
    saved = saved_by_calc(tmp_path / "calc", with_rows(sheet, {"Data sheet: board": BOARD}))
    ended = take(capsys, job, saved)
    assert ended.code == 0
    assert ".file: papers/board.pdf\n" in ended.out


def test_a_second_document_under_the_same_mark_is_shown_and_not_taken(job: Path, sheet: bytes, capsys: Any) -> None:
    take(capsys, job, with_rows(sheet, {"Data sheet: board": BOARD}))
    once = job.read_bytes()
    ended = take(capsys, job, with_rows(sheet, {"Data sheet: board": BOARD | {"Title": "Another"}}))
    assert ended.code == 1
    assert "1 conflict, not taken" in ended.out
    assert job.read_bytes() == once


FAULTY = [
    ({"Entry": "nothing"}, "the row does not say which document it is"),
    ({"Date of document": "soon"}, "soon"),
    ({"Type": "brochure"}, "brochure"),
    ({"Entry": "EM2 {colour: blue}"}, "'colour' is the name of no field"),
]


@pytest.mark.parametrize(
    ("row", "told"),
    FAULTY,
)
def test_what_cannot_be_read_is_told_at_its_cell(
    row: dict[str, Any], told: str, job: Path, sheet: bytes, capsys: Any
) -> None:
    ended = take(capsys, job, with_rows(sheet, {"Data sheet: board": BOARD | row}))
    assert ended.code == 1
    assert "back.xlsx, Documents sent!" in ended.err
    assert told in ended.err
