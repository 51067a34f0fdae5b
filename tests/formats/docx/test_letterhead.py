"""A firm's letterhead: what of it is used, what is left out with a word, and what is refused. All behavior is ours."""

import io
from pathlib import Path
from typing import Any

import docx
import pytest
from docx.oxml.ns import qn

from specgen.formats.docx import word_file as writer
from specgen.formats.docx.letterhead import read_letterhead
from specgen.model.block import Document
from tests.documents.support import document_of
from tests.formats.docx import letterheads as made
from tests.running import run_main
from tests.support import SMALL, written

HEADER = "word/header1.xml"


@pytest.fixture(scope="module")
def procedure() -> Document:
    return document_of("clean", "D08")


@pytest.fixture(scope="module")
def form() -> Document:
    return document_of("clean", "D10")


def on(folder: Path, document: Document, changes: dict[str, Any] | None = None) -> Any:
    """The document on the firm's paper with these parts changed, opened again."""
    file = made.kept(folder, made.firm(changes))
    return docx.Document(io.BytesIO(writer.write_docx(document, file)))


def notes(folder: Path, changes: dict[str, Any]) -> tuple[str, ...]:
    return read_letterhead(made.kept(folder, made.firm(changes))).notes


@pytest.mark.parametrize("size", [made.LETTER, made.A4, made.LANDSCAPE], ids=["letter", "A4", "landscape"])
def test_page_size_and_margins_are_those_of_the_letterhead(
    tmp_path: Path, procedure: Document, form: Document, size: tuple[int, int]
) -> None:
    changes = {"word/document.xml": made.document(made.section(size))}
    for document, wide in ((procedure, size), (form, (max(size), min(size)))):
        again = on(tmp_path, document, changes)
        page = again.sections[0]
        assert len(again.sections) == 1
        assert (page.page_width.twips, page.page_height.twips) == wide
        assert (page.left_margin.twips, page.right_margin.twips) == (1500, 1100)
        assert (page.top_margin.twips, page.bottom_margin.twips) == (1700, 1300)
        text = wide[0] - 1500 - 1100
        for table in again.tables:
            columns = [int(column.get(qn("w:w"))) for column in table._tbl.iter(qn("w:gridCol"))]
            assert text - len(columns) <= sum(columns) <= text
        turned = page._sectPr.find(qn("w:pgSz")).get(qn("w:orient"))
        assert turned == ("landscape" if wide[0] > wide[1] else None)


def test_a_gutter_narrows_the_tables(tmp_path: Path, procedure: Document) -> None:
    section = made.section().replace('w:gutter="0"', 'w:gutter="400"')
    table = on(tmp_path, procedure, {"word/document.xml": made.document(section)}).tables[0]
    assert sum(int(c.get(qn("w:w"))) for c in table._tbl.iter(qn("w:gridCol"))) <= made.A4[0] - 1500 - 1100 - 400


def test_the_picture_of_the_header_goes_along_and_gets_alternative_text(tmp_path: Path, procedure: Document) -> None:
    header = on(tmp_path, procedure).sections[0].header
    blip = next(header._element.iter(f"{{{made.A}}}blip"))
    assert header.part.related_parts[blip.get(qn("r:embed"))].blob == made.picture()
    assert all(p.get("descr") for p in header._element.iter(f"{{{made.WP}}}docPr"))
    assert "Sample Walls" in header._element.xpath("string(.)")
    assert procedure.project in header._element.xpath("string(.)")


def test_a_footer_that_counts_pages_is_not_given_a_second_count(tmp_path: Path, procedure: Document) -> None:
    fields = '<w:fldSimple w:instr=" PAGE "/><w:fldSimple w:instr=" NUMPAGES "/>'
    footer = on(tmp_path, procedure, {"word/footer1.xml": made.header(fields, "ftr")}).sections[0].footer._element
    assert len(footer.findall(f".//{qn('w:fldSimple')}")) == 2
    footer = on(tmp_path, procedure).sections[0].footer._element
    assert [f.get(qn("w:instr")).strip() for f in footer.iter(qn("w:fldSimple"))] == ["PAGE", "NUMPAGES"]
    assert "1 Nowhere Road" in footer.xpath("string(.)")


def test_a_first_page_and_even_pages_of_their_own_carry_the_running_lines(tmp_path: Path, procedure: Document) -> None:
    references = '<w:headerReference w:type="first" r:id="rId2"/>'
    again = on(
        tmp_path,
        procedure,
        {
            "word/document.xml": made.document(made.section(more="<w:titlePg/>", references=references)),
            "word/settings.xml": made.settings("<w:evenAndOddHeaders/>"),
        },
    )
    page = again.sections[0]
    assert page.different_first_page_header_footer
    assert again.settings.odd_and_even_pages_header_footer
    assert "Sample Walls" in page.first_page_header._element.xpath("string(.)")
    assert "Sample Walls" not in page.header._element.xpath("string(.)")
    for header in (page.header, page.first_page_header, page.even_page_header):
        assert procedure.project in header._element.xpath("string(.)")
    for footer in (page.footer, page.first_page_footer, page.even_page_footer):
        assert footer._element.findall(f".//{qn('w:fldSimple')}")


def test_the_firms_styles_are_used_and_ours_are_added_to_them(tmp_path: Path, procedure: Document) -> None:
    again = on(tmp_path, procedure)
    heads = [p for p in again.paragraphs if p._p.style == "berschrift1"]
    assert len(heads) == 3
    styles = {s.find(qn("w:name")).get(qn("w:val")): s for s in again.styles.element.iterchildren(qn("w:style"))}
    assert styles["heading 1"].find(f".//{qn('w:color')}").get(qn("w:val")) == "1F3864"
    assert styles["heading 2"].find(qn("w:basedOn")).get(qn("w:val")) == "Standard"
    assert not list(styles["heading 2"].iter(qn("w:rFonts")))  # the firm's font
    ids = [s.get(qn("w:styleId")) for s in styles.values()]
    assert len(ids) == len(set(ids))
    used = {node.get(qn("w:val")) for tag in ("w:pStyle", "w:tblStyle") for node in again.element.body.iter(qn(tag))}
    assert used <= set(ids)
    languages = {node.get(qn("w:val")) for node in again.styles.element.iter(qn("w:lang"))}
    assert languages == {"en-US"}


def test_a_style_of_another_type_or_a_taken_id_does_not_disturb(tmp_path: Path) -> None:
    draft = document_of("clean", "D08", draft=True)
    taken = made.style("Note", kind="character") + made.style("Quotation", id_="Sheet") + made.style("TITLE")
    text = f"<w:styles {made.SPACES}>{made.STYLES}{taken}</w:styles>"
    given = read_letterhead(made.kept(tmp_path, made.firm({"word/styles.xml": text})))
    assert (given.styles["Note"], given.styles["Sheet"], given.styles["Title"]) == ("Note2", "Sheet2", "Title")
    again = on(tmp_path, draft, {"word/styles.xml": text})
    assert any(p._p.style == "Note2" for p in again.paragraphs)
    assert len({s.name.lower() for s in again.styles}) == len(again.styles)
    assert {t._tbl.tblPr.style for t in again.tables} == {"Facts", "Layout", "Sheet2"}


def test_a_style_id_with_awkward_signs_stays_one(tmp_path: Path, procedure: Document) -> None:
    odd = made.style("caption", id_="A&amp;B &quot;C&quot;") + made.style("heading 2", id_="H&lt;2&gt;")
    again = on(tmp_path, procedure, {"word/styles.xml": f"<w:styles {made.SPACES}>{made.STYLES}{odd}</w:styles>"})
    assert sum(p._p.style == "H<2>" for p in again.paragraphs) > 20


def test_lists_of_the_firm_do_not_number_our_headings(tmp_path: Path, form: Document) -> None:
    listed = made.style("heading 2", '<w:pPr><w:numPr><w:numId w:val="4"/></w:numPr></w:pPr>')
    again = on(tmp_path, form, {"word/styles.xml": f"<w:styles {made.SPACES}>{made.STYLES}{listed}</w:styles>"})
    assert not list(again.styles.element.iter(qn("w:numPr")))


def test_tab_stops_of_the_firms_header_do_not_catch_the_running_line(tmp_path: Path, procedure: Document) -> None:
    line = on(tmp_path, procedure).sections[0].header.paragraphs[-1]
    stops = [(t.get(qn("w:val")), t.get(qn("w:pos"))) for t in line._p.iter(qn("w:tab")) if t.get(qn("w:pos"))]
    assert stops == [("clear", "4680"), ("clear", "9026"), ("right", str(made.A4[0] - 2600))]


def test_a_letterhead_without_styles_or_section_is_filled_from_ours(tmp_path: Path, procedure: Document) -> None:
    bare = {"word/document.xml": made.document(""), "word/styles.xml": None, "word/settings.xml": None}
    again = on(tmp_path, procedure, bare | {"word/_rels/document.xml.rels": None})
    assert (again.sections[0].page_width.twips, again.sections[0].page_height.twips) == made.LETTER
    assert any(p.style.name == "Heading 1" for p in again.paragraphs)


def test_of_several_sections_the_first_with_a_header_is_used(tmp_path: Path, procedure: Document) -> None:
    cover = f"<w:p><w:pPr>{made.section(made.LETTER, references='')}</w:pPr></w:p>"
    changes = {"word/document.xml": made.document(cover + made.section(made.A4))}
    assert notes(tmp_path, changes) == ("the letterhead has 2 sections; section 2 is used",)
    assert on(tmp_path, procedure, changes).sections[0].page_width.twips == made.A4[0]


def test_tracked_changes_are_taken_as_made(tmp_path: Path, procedure: Document) -> None:
    who = 'w:id="1" w:author="A" w:date="2026-01-01T00:00:00Z"'
    gone = f"<w:del {who}><w:r><w:delText>Old Road</w:delText></w:r></w:del>"
    inner = f"<w:pPr><w:rPr><w:ins {who}/></w:rPr></w:pPr>{gone}<w:ins {who}>{made.words('New Road')}</w:ins>"
    changed = f"<w:sectPrChange {who}>{made.section(made.LETTER, references='')}</w:sectPrChange>"
    changes = {HEADER: made.header(inner), "word/document.xml": made.document(made.section(more=changed))}
    assert notes(tmp_path, changes) == ("tracked changes of the letterhead are taken as made",)
    again = on(tmp_path, procedure, changes)
    header = again.sections[0].header._element
    assert "New Road" in header.xpath("string(.)")
    assert "Old Road" not in header.xpath("string(.)")
    assert not header.xpath(".//w:ins | .//w:del")
    assert again.sections[0].page_width.twips == made.A4[0]


RELS = "word/_rels/header1.xml.rels"
MAIN_RELS = "word/_rels/document.xml.rels"
OLE = (
    '<w:r><w:object w:dxaOrig="1"><v:shape><v:imagedata r:id="rId1"/></v:shape>'
    '<o:OLEObject r:id="rId2"/></w:object></w:r>'
)
OUTSIDE = '<w:r><w:drawing><wp:inline><a:blip r:link="rId1"/></wp:inline></w:drawing></w:r>'
CHART = '<w:r><w:drawing><a:chart r:id="rId1"/></w:drawing></w:r>'
LETTER = made.document(f"<w:p>{made.words('Dear sirs')}</w:p>{made.section()}")


def beside(kind: str, target: str, content: bytes) -> dict[str, Any]:
    """The main part leads to one more part."""
    return {MAIN_RELS: made.links(*made.MAIN_LINKS, (kind, f"/{target}")), target: content}


def headed(inner: str, *links: tuple[str, str], **more: bytes) -> dict[str, Any]:
    """A header with links of its own."""
    return {HEADER: made.header(inner), RELS: made.links(*links)} | {f"word/{name}.bin": c for name, c in more.items()}


LEFT = [
    ("macros", beside("vbaProject", "word/v.bin", b"x")),
    ("custom XML", beside("customXml", "c/1.xml", b"<a/>")),
    ("comments", beside("comments", "word/c.xml", b'<w:comments><w:comment w:id="1"/></w:comments>')),
    ("embedded objects", headed(OLE, ("image", "media/image1.png"), ("oleObject", "o.bin"), o=b"x")),
    ("linked pictures", headed(OUTSIDE, ("image", "file:///c:/logo.png"))),
    ("charts", headed(CHART, ("chart", "c.bin"), c=b"<c/>")),
    ("text outside header and footer", {"word/document.xml": LETTER}),
]


@pytest.mark.parametrize(("word", "changes"), LEFT, ids=[word for word, _ in LEFT])
def test_what_is_not_paper_is_left_out_with_one_word(
    tmp_path: Path, form: Document, word: str, changes: dict[str, Any]
) -> None:
    assert notes(tmp_path, changes) == (f"{word} of the letterhead are left out",)
    again = on(tmp_path, form, changes)
    for part in again.part.package.iter_parts():
        assert part.partname.rpartition("/")[2] not in ("v.bin", "1.xml", "c.xml", "o.bin", "c.bin")
    header = again.sections[0].header
    for key, value in ((k, v) for e in header._element.iter() for k, v in e.attrib.items()):
        assert not key.startswith(f"{{{made.R}}}") or value in header.part.rels
    assert b"OLEObject" not in header.part.blob


def test_an_embedded_object_stays_as_its_picture(tmp_path: Path, form: Document) -> None:
    header = on(tmp_path, form, dict(LEFT)["embedded objects"]).sections[0].header
    shown = header._element.find(f".//{qn('w:pict')}/{{{made.V}}}shape/{{{made.V}}}imagedata")
    assert header.part.related_parts[shown.get(qn("r:id"))].blob == made.picture()
    assert shown.getparent().get("alt")


@pytest.mark.parametrize("kind", ["template.main+xml", "document.main+xml"])
def test_a_template_becomes_a_document(tmp_path: Path, form: Document, kind: str) -> None:
    again = on(tmp_path, form, {"[Content_Types].xml": made.types(f"{made.TYPE}.{kind}")})
    assert again.part.content_type == f"{made.TYPE}.document.main+xml"


def test_a_document_with_macros_becomes_one_without(tmp_path: Path, form: Document) -> None:
    again = on(tmp_path, form, dict(LEFT)["macros"] | {"[Content_Types].xml": made.types(made.MACROS)})
    assert again.part.content_type == f"{made.TYPE}.document.main+xml"


def test_protection_and_the_template_of_the_firm_are_not_taken_over(tmp_path: Path, form: Document) -> None:
    inner = '<w:trackRevisions/><w:documentProtection w:edit="readOnly" w:enforcement="1"/>'
    settings = on(tmp_path, form, {"word/settings.xml": made.settings(inner)}).settings.element
    assert not settings.xpath("w:trackRevisions | w:documentProtection")


def test_the_option_writes_on_the_paper_and_tells_what_is_left_out(tmp_path: Path, capsys: Any) -> None:
    project = written(tmp_path, SMALL)
    file = made.kept(tmp_path, made.firm(dict(LEFT)["macros"]), "firm.docm")
    done = run_main(capsys, "build", str(project), "--out", str(tmp_path / "out"), "--letterhead", str(file))
    assert done.code == 0
    assert done.out == ""
    assert done.err.splitlines()[0] == "specgen: macros of the letterhead are left out"
    for one in (tmp_path / "out").glob("*.docx"):
        assert docx.Document(str(one)).sections[0].left_margin.twips == 1500
