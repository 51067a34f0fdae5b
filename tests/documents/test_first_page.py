"""The first page and the lines of every page: what is given stands there. Expectations are ours."""

import dataclasses
import itertools
from pathlib import Path

import docx
from docx.oxml.ns import qn

from specgen.documents.catalogue import templates_folder
from specgen.documents.plain_text import plain_text
from specgen.formats import html, text
from specgen.formats.docx import word_file
from specgen.model.block import Blank, Box, Document, ReviewBoxes
from tests.documents.support import document_of, written

PAPER = templates_folder() / "letterhead.docx"


def test_the_title_block_names_project_and_submittal_by_what_is_given(tmp_path: Path) -> None:
    facts = dict(document_of("clean", "D08").facts)
    assert list(facts)[:2] == ["Project", "Project number"]
    assert facts["Submittal"] == "07 24 00-002"
    assert facts["Section"] == "07 24 00, 09 96 00"
    assert facts["Architect"] == "Lintel and Quoin Architects"
    assert facts["Contractor"] == "Almsgrove Building"
    assert facts["Purpose"] == "Submittal, work"
    assert not [text for text in dict(written(tmp_path, "# A\n").facts).values() if "[" in text or not text]


def test_every_page_names_submittal_section_and_document() -> None:
    document = document_of("clean", "D08")
    assert document.running == (
        "Wickerwell Branch Library | Submittal 07 24 00-002",
        "D08 Installation procedure | Revision 0",
    )
    assert document.foot == "Section 07 24 00, 09 96 00 | D08 | March 1, 2027"


def read_revisions(box: Box) -> list[list[str]]:
    """The cells of the table in a box, its header first."""
    assert box.table is not None
    return [[plain_text(cell) for cell in row] for row in (box.table.header, *box.table.rows)]


def stamp_lines(document: Document) -> list[str]:
    """What stands in the box of the architect, below its title."""
    lines = text.write_text(document).splitlines()
    start = next(n for n, line in enumerate(lines) if line.startswith("[ Architect's review"))
    return [line.strip() for line in itertools.takewhile(str.strip, lines[start + 1 :])]


def test_the_boxes_of_the_review_hold_what_the_contractor_states_and_leave_room_for_a_stamp(tmp_path: Path) -> None:
    (boxes,) = (block for block in document_of("clean", "D01").blocks if isinstance(block, ReviewBoxes))
    contractor, revisions = boxes.stated
    said = ["".join(getattr(part, "text", "") for part in line) for line in contractor.lines]
    assert contractor.title == "Contractor's review: Almsgrove Building"
    assert said == [
        "Reviewed and approved; coordinated with the contract documents and other trades. Dimensions of D07 are "
        "verified in the field before lines are snapped",
        "Reviewed by: R. Almsgrove",
        "Signed March 1, 2027",
    ]
    assert read_revisions(revisions) == [
        ["No.", "Date", "Description"],
        ["0", "March 1, 2027", "Submittal, work"],
    ]
    assert boxes.stamp.title == "Architect's review: Lintel and Quoin Architects"
    # Action is the architect's alone, and none is taken on what is sent for information.
    assert stamp_lines(document_of("clean", "D01")) == [
        "Action, items I1 to I4, I9 to I11:",
        "( ) Approved",
        "( ) Approved as noted",
        "( ) Revise and resubmit",
        "( ) Rejected",
        "Informational, items I5 to I8, I12: ( ) Received",
        "By: ____",
        "Date: ____",
    ]


def test_what_the_contractor_has_not_stated_is_left_to_be_filled_in(tmp_path: Path) -> None:
    (boxes,) = written(tmp_path, "{{ review_boxes }}\n").blocks
    assert isinstance(boxes, ReviewBoxes)
    blanks = [part.label for line in boxes.stated[0].lines for part in line if isinstance(part, Blank)]
    assert blanks == ["Reviewed by", "Signature of the contractor", "Date of the review"]


def test_a_resubmittal_says_that_changes_are_listed(tmp_path: Path) -> None:
    change = {"package": {"revision": 1, "changes": ["E2 joint lines moved to jambs"]}}
    document = written(tmp_path, "{{ review_boxes }}\n", change)
    (boxes,) = document.blocks
    assert isinstance(boxes, ReviewBoxes)
    (_, (number, _, changed)) = read_revisions(boxes.stated[1])
    assert (number, changed) == ("1", "Design draft, changes listed below")
    assert "  1 |  | Design draft, changes listed below" in text.write_text(document).splitlines()
    page = html.write_html(document, templates_folder()).decode()
    assert '<caption class="unseen">Revisions</caption>' in page


def test_the_room_for_a_stamp_is_three_inches_each_way(tmp_path: Path) -> None:
    document = written(tmp_path, "{{ review_boxes }}\n")
    file = tmp_path / "a.docx"
    file.write_bytes(word_file.write_docx(document, PAPER))
    (table,) = (t for t in docx.Document(str(file)).tables if t.style is not None and t.style.name == "Boxes")
    # 3 in are 4320 twentieths of a point: ECMA-376 part 1, 22.9.2.14.
    heights = [int(h.get(qn("w:val"))) for h in table._tbl.iter(qn("w:trHeight"))]
    assert sum(heights) >= 4320
    assert int(table._tbl.findall(f".//{qn('w:gridCol')}")[1].get(qn("w:w"))) >= 4320
    # The cell of the stamp begins in the first row and goes on in the others: ECMA-376 part 1, 17.4.84.
    merged = [cell.get(qn("w:val")) for cell in table._tbl.iter(qn("w:vMerge"))]
    assert merged == ["restart", *[None] * (len(heights) - 1)]
    page = html.write_html(document, templates_folder()).decode()
    assert 'class="stamp"' in page
    assert ".boxes .stamp { flex: 0 0 3in; min-height: 3in;" in page
    assert "[ Architect's review ]" in text.write_text(document)


def test_a_hold_point_stands_in_a_heavy_box_in_every_format(tmp_path: Path) -> None:
    document = written(tmp_path, "> **HOLD POINT.** Do not proceed.\n\n> **Caution:** hot.\n")
    file = tmp_path / "a.docx"
    file.write_bytes(word_file.write_docx(document, PAPER))
    styles = [p.style.name for p in docx.Document(str(file)).paragraphs if p.style is not None and "o" in p.text]
    assert "Hold point" in styles
    assert "Note" in styles
    page = html.write_html(document, templates_folder()).decode()
    assert '<p class="note hold" role="note"><strong>HOLD POINT.</strong> Do not proceed.</p>' in page
    lines = text.write_text(document).splitlines()
    at = lines.index("HOLD POINT. Do not proceed.")
    assert lines[at - 1] == lines[at + 1] == "=" * 72


def test_the_end_of_a_section_stands_in_the_middle(tmp_path: Path) -> None:
    document = written(tmp_path, "The work ends.\n\nEND OF SECTION\n")
    file = tmp_path / "a.docx"
    file.write_bytes(word_file.write_docx(document, PAPER))
    ends = [p for p in docx.Document(str(file)).paragraphs if p.style is not None and p.style.name == "End of section"]
    assert [p.text for p in ends] == ["END OF SECTION"]
    assert '<p class="end">END OF SECTION</p>' in html.write_html(document, templates_folder()).decode()


def test_rows_to_fill_in_by_hand_are_three_tenths_of_an_inch_high(tmp_path: Path) -> None:
    file = tmp_path / "a.docx"
    file.write_bytes(word_file.write_docx(document_of("clean", "D10"), PAPER))
    rows = [row for table in docx.Document(str(file)).tables for row in table._tbl.findall(qn("w:tr"))]
    blanks = [row for row in rows if row.find(f".//{qn('w:text')}") is not None]
    assert len(blanks) > 20
    # 0.3 in are 432 twentieths of a point.
    assert all(int(row.find(f"{qn('w:trPr')}/{qn('w:trHeight')}").get(qn("w:val"))) >= 432 for row in blanks)


def test_a_document_without_a_firm_or_foot_is_written_all_the_same(tmp_path: Path) -> None:
    bare = dataclasses.replace(written(tmp_path, "# A\n"), facts=(), firm="", foot="", running=("", ""))
    file = tmp_path / "a.docx"
    file.write_bytes(word_file.write_docx(bare, PAPER))
    assert [p.text for p in docx.Document(str(file)).paragraphs][:2] == ["D99", "Trial"]
    assert 'class="firm"' not in html.write_html(bare, templates_folder()).decode()
