"""The Word file, reopened and checked by its structure."""

import dataclasses
import io
import re
import zipfile
from pathlib import Path
from typing import Any

import docx
import pytest
from docx.oxml.ns import qn
from lxml import etree

from specgen.documents.catalogue import templates_folder
from specgen.formats.docx import word_file as writer
from specgen.model.block import Article, Document, Item, Paragraph, Part, Table, Text
from tests.documents.support import AWKWARD, document_of, written

PAPER = templates_folder() / "letterhead.docx"
SOURCE = Path(writer.__file__).parent


def opened(document: Document) -> Any:
    return docx.Document(io.BytesIO(writer.write_docx(document, PAPER)))


@pytest.fixture(scope="module")
def procedure() -> Document:
    return document_of("clean", "D08")


def test_word_numbers_headings_and_items_by_one_list_and_shows_what_the_tree_says(procedure: Document) -> None:
    body = opened(procedure).element.body
    shown = []
    counts = [0] * 5
    for paragraph in body.iterchildren(qn("w:p")):
        level = paragraph.find(f"{qn('w:pPr')}/{qn('w:numPr')}/{qn('w:ilvl')}")
        if level is not None:
            depth = int(level.get(qn("w:val")))
            counts[depth] += 1
            counts[depth + 1 :] = [0] * (4 - depth)
            shown.append(label(counts, depth))
    wanted = [b.number for b in procedure.blocks if isinstance(b, (Part, Article, Item))]
    assert shown == wanted


def label(counts: list[int], depth: int) -> str:
    """What Word prints for a level of the three-part list, by the formats of numbering.xml."""
    letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
    count = counts[depth]
    return [
        f"PART {count}",
        f"{counts[0]}.{count:02d}",
        f"{letters[(count - 1) % 26] * ((count - 1) // 26 + 1)}.",
        f"{count}.",
        f"{letters[count - 1].lower()}.",
    ][depth]


def test_heading_styles_are_tied_to_the_list(procedure: Document) -> None:
    numbering = opened(procedure).part.numbering_part._element
    tied = [s.get(qn("w:val")) for s in numbering.iter(qn("w:pStyle"))]
    assert tied == ["Heading1", "Heading2"]


def test_lists_of_a_plain_document_begin_anew(tmp_path: Path) -> None:
    document = written(tmp_path, "# A\n1. one\n2. two\n\n# B\n1. one\n")
    found = [
        p.find(f"{qn('w:pPr')}/{qn('w:numPr')}/{qn('w:numId')}").get(qn("w:val"))
        for p in opened(document).element.body.iterchildren(qn("w:p"))
        if p.find(f".//{qn('w:numPr')}") is not None
    ]
    assert found == ["2", "2", "3"]


def test_tables_repeat_their_header_and_do_not_split_rows(procedure: Document) -> None:
    _, _, *tables = opened(procedure).tables[:-1]  # without title block, contents and legend
    assert len(tables) == sum(isinstance(b, Table) for b in procedure.blocks)
    for table in tables:
        rows = table._tbl.findall(qn("w:tr"))
        assert rows[0].find(f"{qn('w:trPr')}/{qn('w:tblHeader')}") is not None
        assert all(row.find(f"{qn('w:trPr')}/{qn('w:cantSplit')}") is not None for row in rows)
        assert table._tbl.find(f"{qn('w:tblPr')}/{qn('w:tblCaption')}").get(qn("w:val"))


def test_no_line_stands_between_a_table_and_a_new_page(tmp_path: Path) -> None:
    # Below a table that fills its page a line would make a page of its own.
    table = "{{ table(view.viewing) }}\n\n"
    words = f"# A\n{table}{{{{ page_break }}}}\n\n# B\n{table}{table}"
    blocks = list(opened(written(tmp_path, words)).element.body.iterchildren(qn("w:p"), qn("w:tbl")))
    tables = [place for place, block in enumerate(blocks) if block.find(f".//{qn('w:tblHeader')}") is not None]
    heading = blocks[tables[0] + 1]
    assert heading.xpath("string(.)") == "B" and heading.find(f"{qn('w:pPr')}/{qn('w:pageBreakBefore')}") is not None
    assert tables[2] - tables[1] == 2  # a line keeps two tables apart


def test_every_page_names_project_document_and_page_count(procedure: Document) -> None:
    section = opened(procedure).sections[0]
    head = section.header._element.xpath("string(.)")
    assert procedure.project in head
    assert "D08 Installation procedure" in head
    assert "DRAFT" not in head
    assert [f.get(qn("w:instr")).strip() for f in section.footer._element.iter(qn("w:fldSimple"))] == [
        "PAGE",
        "NUMPAGES",
    ]


def test_a_draft_says_so_on_every_page(tmp_path: Path) -> None:
    section = opened(written(tmp_path, "# A\n", draft=True)).sections[0]
    assert "DRAFT, NOT FOR SUBMISSION" in section.header._element.xpath("string(.)")


def test_the_contents_lead_to_every_heading(procedure: Document) -> None:
    body = opened(procedure).element.body
    links = [link.get(qn("w:anchor")) for link in body.iter(qn("w:hyperlink"))]
    marks = [mark.get(qn("w:name")) for mark in body.iter(qn("w:bookmarkStart"))]
    assert links == marks
    assert len(links) == sum(isinstance(b, (Part, Article)) for b in procedure.blocks)


def test_blanks_and_boxes_are_content_controls_with_names() -> None:
    body = opened(document_of("clean", "D10")).element.body
    controls = list(body.iter(qn("w:sdt")))
    assert len(controls) > 30
    assert all(c.find(f"{qn('w:sdtPr')}/{qn('w:alias')}").get(qn("w:val")) for c in controls)
    ids = [c.find(f"{qn('w:sdtPr')}/{qn('w:id')}").get(qn("w:val")) for c in controls]
    assert len(ids) == len(set(ids))


def test_a_form_lies_wide() -> None:
    section = opened(document_of("clean", "D10")).sections[0]
    assert section.page_width > section.page_height


def test_awkward_text_is_shown_as_text(tmp_path: Path) -> None:
    document = written(tmp_path, "1. {{ project.name }}\n", {"project": {"name": AWKWARD}})
    assert any(p.text == AWKWARD for p in opened(document).paragraphs)


def test_signs_that_xml_cannot_hold_are_left_out(tmp_path: Path) -> None:
    """The production Char of XML 1.0, section 2.2, excludes these."""
    document = dataclasses.replace(
        written(tmp_path, "1. words\n"),
        project="Tri\x01al\x0b \ufffeHall",
        blocks=(Paragraph((Text("Tri\x01al\x0b \ufffeHall"),)),),
    )
    again = opened(document)
    assert any(p.text == "Trial Hall" for p in again.paragraphs)
    assert again.core_properties.title == "Trial Hall: Trial"


def test_a_name_of_300_characters_is_kept(tmp_path: Path) -> None:
    name = "Long Hall " * 30
    document = written(tmp_path, "1. {{ project.name }}\n", {"project": {"name": name.strip()}})
    assert any(p.text == name.strip() for p in opened(document).paragraphs)


def test_the_same_document_gives_the_same_bytes_with_a_fixed_date(procedure: Document) -> None:
    made = writer.write_docx(procedure, PAPER)
    assert made == writer.write_docx(procedure, PAPER)
    with zipfile.ZipFile(io.BytesIO(made)) as zipped:
        assert {info.date_time for info in zipped.infolist()} == {(1980, 1, 1, 0, 0, 0)}


def test_every_part_is_well_formed_and_the_language_is_named(procedure: Document) -> None:
    with zipfile.ZipFile(io.BytesIO(writer.write_docx(procedure, PAPER))) as zipped:
        names = [name for name in zipped.namelist() if not name.endswith(".png")]
        parts = {name: etree.fromstring(zipped.read(name)) for name in names}
    assert parts["word/styles.xml"].find(f".//{qn('w:lang')}").get(qn("w:val")) == "en-US"


def test_no_writer_asks_a_table_for_a_cell_by_row_and_column() -> None:
    assert not any(re.search(r"\.cell\(", file.read_text("utf-8")) for file in SOURCE.rglob("*.py"))
