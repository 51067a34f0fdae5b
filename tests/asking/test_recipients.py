"""One workbook for each recipient: a firm one for all its roles, the design side one by way of the contractor.

That owner and designers are asked through the contractor is how contracts have it (common practice, no source).
"""

from pathlib import Path
from typing import Any

import openpyxl
import pytest

from tests.asking.workbooks import filled
from tests.running import run_main

JOB = """\
format: 1
package: {purpose: mockup_submittal}
project: {name: Two Larches}
parties:
  applicator: {name: Lark Coatings}
  general_contractor: {name: Almsgrove Building}
  eifs_source: {name: Graywether Wall Systems}
  sealant_source: {name: graywether wall systems}
walls:
  W1:
    substrate: {kind: concrete}
    attachment: {method: adhesive_full_bed}
"""


@pytest.fixture
def job(tmp_path: Path) -> Path:
    file = tmp_path / "job.yaml"
    file.write_text(JOB, "utf-8")
    return file


def ask(capsys: Any, job: Path, *words: str) -> tuple[Path, str]:
    folder = job.parent / "sheets"
    ended = run_main(capsys, "ask", str(job), "--out", str(folder), "--formats", "xlsx", *words)
    assert ended.code == 0, ended
    return folder, ended.err


def titles(file: Path) -> list[str]:
    """The first line of each page of questions."""
    book = openpyxl.load_workbook(file)
    return [sheet["A1"].value for sheet in book if sheet.title.startswith("Questions")]


def test_the_contractor_gets_what_the_design_side_is_asked(job: Path, capsys: Any) -> None:
    folder, told = ask(capsys, job)
    assert titles(folder / "general-contractor.xlsx")[:3] == [
        "Questions: General contractor, Almsgrove Building",
        "Questions: Owner",
        "Questions: Architect",
    ]
    assert not (folder / "architect.xlsx").exists()
    assert "in general-contractor.xlsx: General contractor, Owner, Architect" in told


def test_a_firm_gets_one_workbook_for_all_its_roles(job: Path, capsys: Any) -> None:
    folder, _ = ask(capsys, job)
    assert titles(folder / "eifs-manufacturer.xlsx") == [
        "Questions: EIFS manufacturer, Graywether Wall Systems",
        "Questions: Sealant manufacturer, graywether wall systems",
    ]
    assert not (folder / "sealant-manufacturer.xlsx").exists()


@pytest.mark.parametrize("contractor", ["", "Lark Coatings"])
def test_without_another_contractor_the_architect_is_asked_directly(job: Path, capsys: Any, contractor: str) -> None:
    line = f"  general_contractor: {{name: {contractor}}}\n" if contractor else ""
    job.write_text(JOB.replace("  general_contractor: {name: Almsgrove Building}\n", line), "utf-8")
    assert titles(ask(capsys, job)[0] / "architect.xlsx") == ["Questions: Architect"]


def test_a_party_that_is_named_gets_its_own_workbook(job: Path, capsys: Any) -> None:
    folder, _ = ask(capsys, job, "--party", "architect")
    assert [file.name for file in folder.glob("*.xlsx")] == ["architect.xlsx"]


def test_each_party_of_a_workbook_signs_its_own_answers(job: Path, capsys: Any) -> None:
    file = ask(capsys, job)[0] / "general-contractor.xlsx"

    def answer(book: Any) -> None:
        for cell in book["Project 3"]["A"]:
            value = {"Answered by": "R. Ash", "Date": "2027-02-01"}.get(cell.value)
            if value:
                cell.offset(column=1).value = value
        for row in book["Questions 3"].iter_rows(min_row=4):
            if row[9].value == "project.number":
                row[7].value = "2802"

    file.write_bytes(filled(file.read_bytes(), answer))
    ended = run_main(capsys, "take", str(job), str(file))
    assert ended.code == 0, ended
    assert "general-contractor.xlsx: 1 answer of R. Ash, " in ended.out
    text = job.read_text("utf-8")
    assert "- project.number = 2802" in text
    assert "party: architect" in text
    assert "party: general_contractor" not in text


@pytest.mark.parametrize("lost", ["Project 2", "Questions 2", "Questions"])
def test_a_workbook_that_lost_a_sheet_of_a_party_is_refused_whole(job: Path, capsys: Any, lost: str) -> None:
    file = ask(capsys, job)[0] / "general-contractor.xlsx"
    file.write_bytes(filled(file.read_bytes(), lambda book: book.remove(book[lost])))
    before = job.read_bytes()
    ended = run_main(capsys, "take", str(job), str(file))
    assert ended.code == 2
    assert f"the workbook has no sheet {lost} (keep every sheet, and its name, as it was sent)" in ended.err
    assert job.read_bytes() == before
