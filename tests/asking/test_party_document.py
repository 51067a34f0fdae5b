"""The questions to a party as a Word file, read by another library."""

import io
from pathlib import Path

import docx
import pytest
from docx.document import Document

from specgen.asking.party_document import compose_questions
from specgen.asking.questions import PartySheet, Wanted, gather_sheets
from specgen.documents.catalogue import templates_folder
from specgen.documents.context import DocumentContext
from specgen.formats.docx.word_file import write_docx
from tests.asking.asked import lacking, sheet_of
from tests.formats.docx.validator import findings

W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
LETTERHEAD = templates_folder() / "letterhead.docx"


@pytest.fixture
def context(tmp_path: Path) -> DocumentContext:
    return lacking(tmp_path)


def architect(context: DocumentContext, *wanted: str) -> PartySheet:
    """The sheet of the architect, with documents of these names."""
    sheet = sheet_of(gather_sheets(context, "work"), "architect")
    return sheet._replace(wanted=tuple(Wanted(name, "Mockup; SUB-06", None) for name in wanted))


def opened(context: DocumentContext, sheet: PartySheet) -> Document:
    return docx.Document(io.BytesIO(write_docx(compose_questions(context, sheet), LETTERHEAD)))


def words_of(file: Document) -> list[str]:
    return [paragraph.text for paragraph in file.paragraphs if paragraph.text.strip()]


def test_the_head_says_to_whom_and_by_when(context: DocumentContext) -> None:
    file = opened(context, architect(context))
    assert words_of(file)[:2] == ["Questions\tLark and Mallow Finishes", "Questions for the architect"]
    cells = [cell.text.replace("\u00a0", " ") for row in file.tables[0].rows for cell in row.cells]
    told = dict(zip(cells[::2], cells[1::2], strict=True))
    assert told["Project"] == "Wickerwell Branch Library"
    assert told["To"] == "Lintel and Quoin Architects"
    assert told["Return to"] == "Lark and Mallow Finishes; through Almsgrove Building"
    assert told["Return by"] == "March 1, 2027"


def test_a_day_of_return_that_no_date_tells_is_left_to_be_filled_in(context: DocumentContext) -> None:
    blank = "Return by: "
    assert not any(line.startswith(blank) for line in words_of(opened(context, architect(context))))
    open_day = architect(context)._replace(return_by=None)
    assert any(line.startswith(blank) for line in words_of(opened(context, open_day)))


def test_each_question_has_its_reason_and_an_empty_answer_that_bears_its_field(context: DocumentContext) -> None:
    table = opened(context, architect(context)).tables[1]
    head = [cell.text for cell in table.rows[0].cells]
    assert head == ["No.", "Question", "Unit or form", "Example", "Holds up", "Answer"]
    assert [cell.text.replace("\u00a0", " ") for cell in table.rows[5].cells][:5] == [
        "5",
        "What is the mockup width?\nTrue size; panel plus 2 ft (600 mm).",
        "ft",
        "8 ft",
        "This submittal; MOC-04; D09\nDue March 1, 2027",
    ]
    tags = [tag.get(f"{W}val") for tag in table._element.iter(f"{W}tag")]
    assert tags == [
        "answer.code.local_fasteners_required",
        "answer.elevations.E1.critical_light",
        "answer.elevations.E2.critical_light",
        "answer.aesthetic_joint.tolerance",
        "answer.mockup.width",
    ]


def test_no_row_breaks_and_the_head_repeats(context: DocumentContext) -> None:
    table = opened(context, architect(context)).tables[1]
    assert len(table.rows) == 6
    assert all(row._tr.find(f"{W}trPr/{W}cantSplit") is not None for row in table.rows)
    assert table.rows[0]._tr.find(f"{W}trPr/{W}tblHeader") is not None


def test_what_is_to_be_sent_stands_at_the_end_with_its_marks_told(context: DocumentContext) -> None:
    file = opened(context, architect(context, "Letter on fasteners (E1)"))
    assert [cell.text for cell in file.tables[2].rows[0].cells] == [
        "No.",
        "Document or information",
        "Holds up",
        "Sent, date",
    ]
    assert file.tables[2].rows[1].cells[1].text.endswith("Letter on fasteners (E1)")
    assert words_of(file)[-2:] == ["Documents and information to send", "Marks: E1 South face."]


def test_nothing_is_headed_that_is_not_there(context: DocumentContext) -> None:
    assert "Documents and information to send" not in words_of(opened(context, architect(context)))
    only = architect(context, "Letter")._replace(questions=())
    said = words_of(opened(context, only))
    assert "Questions" not in said
    assert not any("last column" in line for line in said)


def test_the_file_is_valid_and_the_same_each_time(context: DocumentContext, tmp_path: Path) -> None:
    made = compose_questions(context, architect(context, "=1+1 & <b>"))
    content = write_docx(made, LETTERHEAD)
    assert content == write_docx(made, LETTERHEAD)
    (tmp_path / "questions.docx").write_bytes(content)
    assert findings(tmp_path / "questions.docx") == []
