"""What a reader, a screen reader and a word processor find in a Word document, beyond its words."""

import io
import zipfile
from collections.abc import Iterator
from typing import Any

import docx
import pytest
from docx.oxml.ns import qn
from lxml import etree

from specgen.documents.catalogue import templates_folder
from specgen.formats.docx import word_file as writer
from specgen.model.block import Article, Blank, CheckBox, Document, Item, Part, ReviewBoxes, Signature, Table, Value
from tests.documents.support import document_of, written

PAPER = templates_folder() / "letterhead.docx"
IDS = [f"D{number:02d}" for number in (*range(6), *range(7, 14), 15, 16, 18, 19)]
W14 = "{http://schemas.microsoft.com/office/word/2010/wordml}"
VAL = qn("w:val")


@pytest.fixture(scope="module", params=[("clean", False), ("first-look", True)], ids=["clean", "first-look"])
def documents(request: Any) -> list[Document]:
    example, draft = request.param
    return [document_of(example, id_, draft) for id_ in IDS]


def parts_of(document: Document) -> dict[str, Any]:
    """The XML parts of the written document by name."""
    with zipfile.ZipFile(io.BytesIO(writer.write_docx(document, PAPER))) as zipped:
        return {name: etree.fromstring(zipped.read(name)) for name in zipped.namelist() if not name.endswith(".png")}


def body_of(document: Document) -> Any:
    return parts_of(document)["word/document.xml"]


def inlines(content: Any) -> Iterator[Any]:
    """Every inline of a tree, however deep."""
    for part in content:
        yield part
        yield from inlines(getattr(part, "children", ()))


def contents(document: Document) -> list[Any]:
    """Every inline of a document, those of tables and signatures included."""
    found: list[Any] = []
    for block in document.blocks:
        found += inlines(getattr(block, "title", ()) or getattr(block, "content", ()))
        if isinstance(block, Table):
            found += [one for row in (block.header, *block.rows) for cell in row for one in inlines(cell)]
        if isinstance(block, ReviewBoxes):
            found += [one for box in (*block.stated, block.stamp) for line in box.lines for one in inlines(line)]
        if isinstance(block, Signature):
            for _, name in block.parties:
                found += [Blank("s"), Blank("d", "date"), *([] if name else [Blank("n")])]
    return found


# The levels of a three-part section, as PageFormat of the trade lays them out: from memory.
LEVELS = [
    ("decimal", "PART %1"),
    ("decimalZero", "%1.%2"),
    ("upperLetter", "%3."),
    ("decimal", "%4."),
    ("lowerLetter", "%5."),
]


def test_a_three_part_document_is_one_list_of_five_levels() -> None:
    parts = parts_of(document_of("clean", "D08"))
    (abstract,) = parts["word/numbering.xml"].iter(qn("w:abstractNum"))
    assert abstract.find(qn("w:multiLevelType")).get(VAL) == "multilevel"
    levels = abstract.findall(qn("w:lvl"))
    assert [(v.find(qn("w:numFmt")).get(VAL), v.find(qn("w:lvlText")).get(VAL)) for v in levels] == LEVELS
    assert [v.get(qn("w:ilvl")) for v in levels] == ["0", "1", "2", "3", "4"]
    assert {n.get(VAL) for n in parts["word/document.xml"].iter(qn("w:numId"))} == {"1"}


def test_each_list_of_another_document_begins_anew(documents: list[Document]) -> None:
    for document in (d for d in documents if d.numbering == "plain"):
        parts = parts_of(document)
        runs = {block.run for block in document.blocks if isinstance(block, Item)}
        used = {n.get(VAL) for n in parts["word/document.xml"].iter(qn("w:numId"))}
        assert len(used) == len(runs)
        starts = {
            num.get(qn("w:numId")): num.find(f"{qn('w:lvlOverride')}/{qn('w:startOverride')}").get(VAL)
            for num in parts["word/numbering.xml"].iter(qn("w:num"))
            if num.get(qn("w:numId")) != "1"
        }
        assert starts == dict.fromkeys(used, "1")


def test_the_contents_stand_beside_each_other_by_part() -> None:
    body = body_of(document_of("clean", "D08"))
    _, layout, *_ = body.iter(qn("w:tbl"))
    cells = [["".join(p.itertext()) for p in cell.iter(qn("w:p"))] for cell in layout.iter(qn("w:tc"))]
    # The parts of a section, SectionFormat: from memory.
    assert [lines[0] for lines in cells] == ["PART 1General", "PART 2Products", "PART 3Execution"]
    assert [{line[0] for line in lines[1:]} for lines in cells] == [{"1"}, {"2"}, {"3"}]
    assert not list(body.iter(qn("w:instrText")))


def test_blanks_dates_and_boxes_are_controls_of_their_kind(documents: list[Document]) -> None:
    for document in documents:
        body, wanted = body_of(document), contents(document)
        properties = [control.find(qn("w:sdtPr")) for control in body.iter(qn("w:sdt"))]
        counts = [
            sum(p.find(tag) is not None for p in properties) for tag in (qn("w:text"), qn("w:date"), f"{W14}checkbox")
        ]
        texts = sum(isinstance(one, Blank) and one.kind == "text" for one in wanted)
        dates = sum(isinstance(one, Blank) and one.kind == "date" for one in wanted)
        assert counts == [texts, dates, sum(isinstance(one, CheckBox) for one in wanted)]
        assert all(p.find(qn("w:alias")).get(VAL) for p in properties)
        for date in body.iter(qn("w:date")):
            assert date.find(qn("w:dateFormat")).get(VAL) == "MMMM d, yyyy"
            assert date.find(qn("w:lid")).get(VAL) == "en-US"
        for box in body.iter(f"{W14}checkbox"):
            # The signs of a box without and with a cross: Unicode, Miscellaneous Symbols.
            shown = [int(box.find(f"{W14}{state}State").get(f"{W14}val"), 16) for state in ("unchecked", "checked")]
            assert "".join(map(chr, shown)) == "☐☒"


def lays_out(table: Any) -> bool:
    """Whether a table only lays out what stands beside each other, which has no rows of one kind."""
    return table.find(f".//{qn('w:tblStyle')}").get(VAL) in ("Boxes", "Layout")


def span_of(cell: Any) -> int:
    """The columns that a cell stands across."""
    spans = cell.findall(f"{qn('w:tcPr')}/{qn('w:gridSpan')}")
    return int(spans[0].get(VAL)) if spans else 1


def test_header_rows_are_marked_repeat_and_no_row_splits(documents: list[Document]) -> None:
    for document in documents:
        head, *tables = (table for table in body_of(document).iter(qn("w:tbl")) if not lays_out(table))
        revisions = sum(isinstance(block, ReviewBoxes) for block in document.blocks)
        assert len(tables) == revisions + sum(isinstance(block, (Table, Signature)) for block in document.blocks)
        # Bits of a table's look, ECMA-376 part 1, 17.4.56: 0x20 header row, 0x80 header column.
        assert int(head.find(f".//{qn('w:tblLook')}").get(VAL), 16) & 0x80
        for table in tables:
            first, *rest = table.findall(qn("w:tr"))
            assert int(table.find(f".//{qn('w:tblLook')}").get(VAL), 16) & 0x20
            assert first.find(f"{qn('w:trPr')}/{qn('w:tblHeader')}") is not None
            assert all(row.find(f"{qn('w:trPr')}/{qn('w:tblHeader')}") is None for row in rest)
            assert all(row.find(f"{qn('w:trPr')}/{qn('w:cantSplit')}") is not None for row in (first, *rest))
            columns = len(table.find(qn("w:tblGrid")))
            assert {sum(map(span_of, row.findall(qn("w:tc")))) for row in (first, *rest)} == {columns}
            assert table.find(f".//{qn('w:tblCaption')}").get(VAL)


def test_headings_come_in_order_below_one_title(documents: list[Document]) -> None:
    for document in documents:
        parts = parts_of(document)
        levels = {
            style.get(qn("w:styleId")): int(level.get(VAL))
            for style in parts["word/styles.xml"].iter(qn("w:style"))
            if (level := style.find(f"{qn('w:pPr')}/{qn('w:outlineLvl')}")) is not None
        }
        used = [style.get(VAL) for style in parts["word/document.xml"].iter(qn("w:pStyle"))]
        assert used.count("Title") == 1
        order = [levels[style] for style in used if style in levels]
        assert len(order) == sum(isinstance(block, (Part, Article)) for block in document.blocks)
        assert order[0] == 0
        assert all(after - before <= 1 for before, after in zip(order, order[1:], strict=False))
        assert used.index("Title") < min(used.index(style) for style in levels if style in used)


def test_every_style_that_is_used_is_there(documents: list[Document]) -> None:
    for document in documents:
        parts = parts_of(document)
        ids = {style.get(qn("w:styleId")) for style in parts["word/styles.xml"].iter(qn("w:style"))}
        for name, root in parts.items():
            used = {
                n.get(VAL)
                for tag in ("pStyle", "rStyle", "tblStyle", "basedOn", "next")
                for n in root.iter(qn(f"w:{tag}"))
            }
            assert used <= ids, name


def test_the_language_is_told_wherever_it_is_asked(documents: list[Document]) -> None:
    parts = parts_of(documents[0])
    assert {node.get(VAL) for node in parts["word/styles.xml"].iter(qn("w:lang"))} == {"en-US"}
    assert parts["word/settings.xml"].find(qn("w:themeFontLang")).get(VAL) == "en-US"
    again = docx.Document(io.BytesIO(writer.write_docx(documents[0], PAPER)))
    assert again.core_properties.language == "en-US"
    assert again.core_properties.title == f"{documents[0].project}: {documents[0].title}"


def test_every_picture_has_words(documents: list[Document]) -> None:
    for document in documents:
        for root in parts_of(document).values():
            for node in root.iter("{http://schemas.openxmlformats.org/drawingml/2006/wordprocessingDrawing}docPr"):
                assert node.get("descr")
            for node in root.iter("{urn:schemas-microsoft-com:vml}imagedata"):
                assert node.getparent().get("alt")


def luminance(color: str) -> float:
    """Relative luminance of a color as WCAG 2.1 defines it."""
    parts = [int(color[place : place + 2], 16) / 255 for place in (0, 2, 4)]
    red, green, blue = (part / 12.92 if part <= 0.03928 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_text_stands_out_from_every_ground_as_wcag_asks(documents: list[Document]) -> None:
    """Success criterion 1.4.3 of WCAG 2.1: at least 4.5 to 1, here against each ground there is."""
    assert contrast("FFFFFF", "000000") == pytest.approx(21)
    for document in documents:
        roots = parts_of(document).values()
        colors = {node.get(VAL) for root in roots for node in root.iter(qn("w:color"))} | {"000000"}
        grounds = {node.get(qn("w:fill")) for root in roots for node in root.iter(qn("w:shd"))} | {"FFFFFF"}
        assert {"595959", "1F4452"} <= colors
        assert "F2F2EF" in grounds
        for color in colors:
            assert min(contrast(color, ground) for ground in grounds) >= 4.5, color


def test_nothing_is_told_by_color_alone(documents: list[Document]) -> None:
    shaded = 0
    for document in documents:
        body = body_of(document)
        assert not list(body.iter(qn("w:color")))
        # A row that stands across its table is shaded whole and bold: its words tell of it.
        for shade in body.xpath(".//w:shd[not(parent::w:tcPr/w:gridSpan)]", namespaces=body.nsmap):
            text = "".join(t.text for t in shade.getparent().getparent().iter(qn("w:t")))
            assert (text[0], text[-1]) == ("[", "]")
            shaded += 1
    opened = sum(isinstance(one, Value) and one.open for document in documents for one in contents(document))
    assert shaded == opened
    assert opened or not documents[0].draft


def test_a_draft_is_told_in_words_on_its_first_page_too(tmp_path: Any) -> None:
    parts = parts_of(written(tmp_path, "# A\n", draft=True))
    assert "Draft. For information; not submitted for review. " in "".join(parts["word/document.xml"].itertext())
