"""The workbook of questions, read back by a second library and opened and saved by a spreadsheet program."""

import csv
import datetime
import io
import shutil
import sys
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from specgen.asking.question_book import write_question_book
from specgen.asking.questions import PartySheet, Question, Wanted, gather_sheets
from specgen.documents.context import DocumentContext
from specgen.model.problem import Refused
from tests.asking.asked import lacking, sheet_of
from tests.documents.example import changed_small
from tests.formats.docx.validator import findings
from tests.formats.sheets import AWKWARD, LIKE_FORMULAS, read_back
from tests.running import run_process

HEAD = ["No.", "Question", "Why it is asked", "Unit or form", "Example", "Holds up", "Due", "Answer", "Remark", "Field"]
OFFICE = shutil.which("soffice")
DUE = datetime.date(2027, 3, 1)


def sheet_with(*texts: str, choices: tuple[str, ...] = ()) -> PartySheet:
    """A sheet with a question, and a document, in each of these words."""
    questions = tuple(Question("project.number", text, text, text, text, choices, text, DUE) for text in texts)
    wanted = tuple(Wanted(text, text, None) for text in texts)
    return PartySheet("architect", "Architect", texts[0], texts[0], DUE, questions, wanted, ())


@pytest.fixture
def book(tmp_path: Path) -> Any:
    """The workbook of the architect of the example."""
    context = lacking(tmp_path)
    return read_back(write_question_book(context, sheet_of(gather_sheets(context, "work"), "architect")))


@pytest.fixture
def small(tmp_path: Path) -> DocumentContext:
    return changed_small(tmp_path, {})


def test_the_sheets_stand_where_they_are_read_from(book: Any) -> None:
    assert book.sheetnames == ["Questions", "Project", "Choices"]
    assert book["Choices"].sheet_state == "hidden"
    page = book["Questions"]
    assert [cell.value for cell in page[3]] == HEAD
    assert [cell.value for cell in page[4]] == [
        "1",
        "Fasteners required by local code: yes or no?",
        "Conflicts head-on with this finish; never assumed.",
        "yes or no",
        None,
        "Decision on the walls; ATT-03; D02, D03",
        datetime.datetime(2027, 3, 1),
        None,
        None,
        "code.local_fasteners_required",
    ]
    assert [page.cell(row, 10).value for row in range(4, 10)] == [
        "code.local_fasteners_required",
        "elevations.E1.critical_light",
        "elevations.E2.critical_light",
        "aesthetic_joint.tolerance",
        "mockup.width",
        None,
    ]


def test_the_project_tells_what_the_answers_belong_to(book: Any) -> None:
    page = book["Project"]
    assert [(page.cell(row, 1).value, page.cell(row, 2).value) for row in range(3, 13)] == [
        ("Project", "Wickerwell Branch Library"),
        ("Project number", "2731"),
        ("Project file", "project.yaml"),
        ("Party", "Architect, Lintel and Quoin Architects"),
        ("Party code", "architect"),
        ("Format", "1"),
        ("Return to", "Lark and Mallow Finishes; through Almsgrove Building"),
        ("Return by", "2027-03-01"),
        ("Answered by", None),
        ("Date", None),
    ]
    assert [page.cell(row, 2).protection.locked for row in (10, 11, 12)] == [True, False, False]


def test_answers_can_be_filled_in_and_nothing_else(book: Any) -> None:
    page = book["Questions"]
    assert page.protection.sheet and not page.protection.password
    for row in range(4, 9):
        unlocked = [HEAD[cell.column - 1] for cell in page[row] if not cell.protection.locked]
        assert unlocked == ["Answer", "Remark"]
        assert page.cell(row, 8).number_format == "@"  # text: 3/4 stays as it was typed
        assert page.cell(row, 8).fill.start_color.rgb == "FFFFF9DB"


def test_choices_are_offered_from_a_sheet_of_their_own(book: Any) -> None:
    rules = book["Questions"].data_validations.dataValidation
    assert [(rule.type, str(rule.sqref), rule.formula1, rule.errorStyle) for rule in rules] == [
        ("list", f"H{row}", "Choices!$A$1:$A$2", "warning") for row in (4, 5, 6)
    ]
    assert [row[0].value for row in book["Choices"].iter_rows()] == ["yes", "no"]


def test_the_head_stays_and_the_pages_are_as_wide_as_the_paper(book: Any) -> None:
    page = book["Questions"]
    assert page.freeze_panes == "C4"
    assert page.print_title_rows == "$3:$3"
    assert page.print_area == "'Questions'!$A$1:$I$8"
    assert (page.page_setup.orientation, page.page_setup.fitToHeight) == ("landscape", 0)
    assert page.sheet_properties.pageSetUpPr.fitToPage
    assert [page.column_dimensions[letter].width > 10 for letter in "BCDEFGHIJ"] == [True] * 9


def test_documents_stand_on_a_sheet_that_says_that_they_answer_no_question(small: DocumentContext) -> None:
    made = read_back(write_question_book(small, sheet_with("Letter")))
    page = made["Documents"]
    assert page["A2"].value.endswith("They answer no question of the sheet Questions.")
    assert [cell.value for cell in page[3]] == ["No.", "Document", "Holds up", "Due", "Sent on", "Remark"]
    assert [cell.value for cell in page[4]] == ["1", "Letter", "Letter", None, None, None]
    assert [cell.protection.locked for cell in page[4]] == [True, True, True, True, False, False]


def test_a_party_without_questions_is_told_where_to_look(small: DocumentContext) -> None:
    page = read_back(write_question_book(small, sheet_with("a")._replace(questions=())))["Questions"]
    assert (page["B4"].value, page["J4"].value) == ("No questions; see the sheet Documents.", None)


@pytest.mark.parametrize("text", [*LIKE_FORMULAS, *AWKWARD])
def test_what_begins_like_a_formula_is_a_text(small: DocumentContext, text: str) -> None:
    made = read_back(write_question_book(small, sheet_with(text, choices=(text,))))
    kinds = {cell.data_type for page in made for row in page.iter_rows() for cell in row if cell.value is not None}
    assert kinds <= {"s", "d"}
    assert made["Questions"]["B4"].value == text
    assert made["Choices"]["A1"].value == text


def test_the_workbook_is_valid_and_the_same_each_time(small: DocumentContext, tmp_path: Path) -> None:
    sheet = sheet_with("one", "two", choices=("a", "b"))
    content = write_question_book(small, sheet)
    assert content == write_question_book(small, sheet)
    (tmp_path / "book.xlsx").write_bytes(content)
    assert findings(tmp_path / "book.xlsx") == []


def test_many_choices_stand_beyond_the_last_letter(small: DocumentContext) -> None:
    asked = [Question("project.number", "?", "", "", "", (f"a{n}", "b"), "", None) for n in range(28)]
    made = read_back(write_question_book(small, sheet_with("x")._replace(questions=tuple(asked))))
    rules = [rule.formula1 for rule in made["Questions"].data_validations.dataValidation]
    assert (rules[25], rules[26], rules[27]) == (
        "Choices!$Z$1:$Z$2",
        "Choices!$AA$1:$AA$2",
        "Choices!$AB$1:$AB$2",
    )
    assert made["Choices"]["AB1"].value == "a27"


def test_without_the_library_it_is_told_how_to_go_on(small: DocumentContext, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "xlsxwriter", None)
    with pytest.raises(Refused, match="extra sheets"):
        write_question_book(small, sheet_with("a"))


def fill_in(content: bytes, answers: dict[str, str]) -> bytes:
    """The workbook with answers typed into cells of the sheet Questions."""
    made = read_back(content)
    for place, answer in answers.items():
        made["Questions"][place] = answer
    stream = io.BytesIO()
    made.save(stream)
    return stream.getvalue()


def converted(folder: Path, content: bytes, form: str) -> Path:
    """A workbook as the spreadsheet program opens it and saves it in another form."""
    (folder / "sheet.xlsx").write_bytes(content)
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    words = [str(OFFICE), "--headless", profile, "--convert-to", form, "--outdir", str(folder / "out")]
    done = run_process([*words, str(folder / "sheet.xlsx")])
    assert done.code == 0, done
    return folder / "out" / f"sheet.{form.partition(':')[0]}"


@pytest.mark.skipif(OFFICE is None, reason="no spreadsheet program")
def test_a_spreadsheet_program_keeps_questions_and_answers_as_they_are(tmp_path: Path) -> None:
    context = lacking(tmp_path)
    content = write_question_book(context, sheet_of(gather_sheets(context, "work"), "architect"))
    filled = fill_in(content, {"H4": "no", "H7": "3/4", "H8": "=1+1", "I8": "2027-03-01"})
    saved = openpyxl.load_workbook(converted(tmp_path, filled, "xlsx"))
    before, after = read_back(content), saved
    assert after.sheetnames == before.sheetnames
    for name in before.sheetnames:
        for row in before[name].iter_rows():
            for cell in row:
                if name != "Questions" or cell.column not in (8, 9):
                    assert after[name].cell(cell.row, cell.column).value == cell.value, (name, cell.coordinate)
    page = after["Questions"]
    assert (page["H4"].value, page["H7"].value, page["H7"].data_type) == ("no", "3/4", "s")
    assert page["I8"].value == "2027-03-01"
    assert page.protection.sheet
    assert not page["H5"].protection.locked and page["H5"].number_format == "@"
    (rule,) = (one for one in page.data_validations.dataValidation if "H4" in str(one.sqref))
    assert rule.formula1.replace("$Choices.", "Choices!") == "Choices!$A$1:$A$2"


@pytest.mark.skipif(OFFICE is None, reason="no spreadsheet program")
def test_a_spreadsheet_program_shows_the_same_questions(tmp_path: Path) -> None:
    context = lacking(tmp_path)
    content = write_question_book(context, sheet_of(gather_sheets(context, "work"), "architect"))
    with converted(tmp_path, content, "csv:Text - txt - csv (StarCalc):44,34,76").open(encoding="utf-8") as file:
        rows = list(csv.reader(file))
    assert rows[0][0] == "Questions: Architect, Lintel and Quoin Architects"
    assert rows[2] == HEAD
    assert rows[3][:4] == [
        "1",
        "Fasteners required by local code: yes or no?",
        "Conflicts head-on with this finish; never assumed.",
        "yes or no",
    ]
    assert [row[6] for row in rows[3:8]] == ["2027-03-01"] * 5
