"""What leads out of a header, and styles that lack something: what stays, and what is left out with a word.

Names of elements and parts are those of ECMA-376; what is done with them is ours.
"""

import io
from pathlib import Path
from typing import Any

import docx
import pytest
from docx.oxml.ns import qn

from specgen.formats.docx import word_file as writer
from specgen.formats.docx.letterhead import read_letterhead
from specgen.model.problem import Refused
from tests.documents.support import document_of
from tests.formats.docx import letterheads as made

HEADER = "word/header1.xml"
RELS = "word/_rels/header1.xml.rels"


def on(folder: Path, changes: dict[str, Any]) -> Any:
    """A form on the firm's paper with these parts changed, opened again."""
    return docx.Document(
        io.BytesIO(writer.write_docx(document_of("clean", "D10"), made.kept(folder, made.firm(changes))))
    )


def header_on(folder: Path, inner: str, *links: tuple[str, str]) -> Any:
    """The header of that form where the firm's own has this content and these links."""
    return on(folder, {HEADER: made.header(inner), RELS: made.links(*links)}).sections[0].header


def notes(folder: Path, changes: dict[str, Any]) -> tuple[str, ...]:
    return read_letterhead(made.kept(folder, made.firm(changes))).notes


def test_an_address_stays_a_link_and_one_that_leads_nowhere_becomes_words(tmp_path: Path) -> None:
    inner = "".join(f'<w:hyperlink r:id="rId{n}">{made.words(f"link {n}")}</w:hyperlink>' for n in (1, 2))
    header = header_on(tmp_path, inner, ("hyperlink", "https://walls.example/"))
    kept, bare = header._element.iter(qn("w:hyperlink"))
    assert header.part.rels[kept.get(qn("r:id"))].target_ref == "https://walls.example/"
    assert not bare.attrib
    assert "link 1link 2" in header._element.xpath("string(.)")


def test_a_picture_stays_where_only_its_link_leads_nowhere(tmp_path: Path) -> None:
    inner = made.drawing().replace(
        '<wp:docPr id="1" name="logo"/>', '<wp:docPr id="1" name="logo"><a:hlinkClick r:id="rId7"/></wp:docPr>'
    )
    header = header_on(tmp_path, inner, ("image", "media/image1.png"))
    (shown,) = header._element.iter(f"{{{made.A}}}blip")
    assert header.part.related_parts[shown.get(qn("r:embed"))].blob == made.picture()
    assert not list(header._element.iter(f"{{{made.A}}}hlinkClick"))


def test_comments_of_a_header_are_left_out_and_its_words_stay(tmp_path: Path) -> None:
    marks = ('<w:commentRangeStart w:id="1"/>', '<w:commentRangeEnd w:id="1"/>')
    inner = made.words("Sample Walls").join(marks) + '<w:r><w:commentReference w:id="1"/></w:r>'
    assert notes(tmp_path, {HEADER: made.header(inner), RELS: None}) == ("comments of the letterhead are left out",)
    header = header_on(tmp_path, inner)._element
    assert "Sample Walls" in header.xpath("string(.)")
    assert not header.xpath(".//w:commentRangeStart | .//w:commentRangeEnd | .//w:commentReference")


def test_an_embedded_object_that_shows_nothing_is_taken_out_whole(tmp_path: Path) -> None:
    inner = '<w:r><w:object><o:OLEObject r:id="rId1"/></w:object></w:r>' + made.words("Sample Walls")
    header = header_on(tmp_path, inner)._element
    assert "Sample Walls" in header.xpath("string(.)")
    assert not header.xpath(".//w:object | .//w:pict")


def test_a_control_of_a_header_keeps_its_words_without_its_number(tmp_path: Path) -> None:
    inner = f'<w:sdt><w:sdtPr><w:id w:val="7"/></w:sdtPr><w:sdtContent>{made.words("Sample")}</w:sdtContent></w:sdt>'
    header = header_on(tmp_path, inner)._element
    assert "Sample" in header.xpath("string(.)")
    assert not header.xpath(".//w:sdtPr/w:id")


def test_two_pictures_of_one_name_stay_two(tmp_path: Path) -> None:
    another = made.picture() + b"another"
    inner = made.drawing() + made.drawing('r:embed="rId2"')
    changes = {
        HEADER: made.header(inner),
        RELS: made.links(("image", "media/image1.png"), ("image", "/other/image1.png")),
        "other/image1.png": another,
    }
    header = on(tmp_path, changes).sections[0].header
    shown = header._element.iter(f"{{{made.A}}}blip")
    assert [header.part.related_parts[one.get(qn("r:embed"))].blob for one in shown] == [made.picture(), another]


def styles(inner: str) -> dict[str, str]:
    return {"word/styles.xml": f"<w:styles {made.SPACES}>{inner}</w:styles>"}


@pytest.mark.parametrize(
    "defaults",
    [
        "",
        "<w:docDefaults/>",
        "<w:docDefaults><w:rPrDefault><w:rPr><w:b/><w:specVanish/></w:rPr></w:rPrDefault></w:docDefaults>",
    ],
    ids=["no defaults", "empty", "no language"],
)
def test_the_language_is_told_whatever_the_defaults_of_the_firm_lack(tmp_path: Path, defaults: str) -> None:
    root = on(tmp_path, styles(defaults + made.style("Normal", default=' w:default="1"'))).styles.element
    (language,) = root.xpath("w:docDefaults/w:rPrDefault/w:rPr/w:lang")
    assert language.get(qn("w:val")) == "en-US"
    # The order of the schema: what is hidden follows the language.
    assert [one.tag for one in language.itersiblings()] == [qn("w:specVanish")] * defaults.count("specVanish")


def test_a_style_without_an_id_is_given_one_that_is_free(tmp_path: Path) -> None:
    nameless = '<w:style w:type="paragraph"><w:name w:val="heading 1"/></w:style>'
    root = on(tmp_path, styles(made.style("Normal", default=' w:default="1"', id_="Style1") + nameless)).styles.element
    ids = [style.get(qn("w:styleId")) for style in root.iter(qn("w:style"))]
    assert all(ids) and len({id_.lower() for id_ in ids}) == len(ids)


def test_a_tab_stop_at_no_number_counts_as_one_at_the_margin(tmp_path: Path) -> None:
    tab = '<w:pPr><w:tabs><w:tab w:val="center" w:pos="wide"/></w:tabs></w:pPr>'
    inner = made.style("Normal", default=' w:default="1"') + made.style("header", tab)
    assert "D10" in on(tmp_path, styles(inner)).sections[0].header._element.xpath("string(.)")


def test_embedded_fonts_are_left_out(tmp_path: Path) -> None:
    font = '<w:font w:name="Own"><w:embedRegular r:id="rId1"/></w:font>'
    changes = {
        "word/fontTable.xml": f"<w:fonts {made.SPACES}>{font}</w:fonts>",
        "word/_rels/document.xml.rels": made.links(*made.MAIN_LINKS, ("fontTable", "fontTable.xml")),
    }
    assert notes(tmp_path, changes) == ("embedded fonts of the letterhead are left out",)


def test_a_document_with_another_root_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="the letterhead is damaged in word/document.xml"):
        notes(tmp_path, {"word/document.xml": made.settings()})


def test_the_border_of_the_page_goes_along_and_leads_to_no_other_part(tmp_path: Path) -> None:
    border = '<w:pgBorders r:id="rId9"><w:top w:val="single" w:sz="4" w:space="24" w:color="1F3864"/></w:pgBorders>'
    section = on(tmp_path, {"word/document.xml": made.document(made.section(more=border))}).sections[0]._sectPr
    (kept,) = section.iter(qn("w:pgBorders"))
    assert not kept.attrib
    assert kept.find(qn("w:top")).get(qn("w:color")) == "1F3864"
