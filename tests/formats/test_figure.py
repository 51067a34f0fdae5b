"""A figure in every format: what a reader sees, and what a screen reader reads."""

import io
import struct
import zipfile
from pathlib import Path
from typing import Any

import docx
import pytest
from docx.oxml.ns import qn
from lxml import etree
from lxml import html as parser
from openxml_audit import FileFormat, OpenXmlValidator

from specgen import building
from specgen.documents.catalogue import templates_folder
from specgen.documents.numbering import number_blocks
from specgen.formats import html, png, text
from specgen.formats.docx import word_file
from specgen.model.block import Article, Document, Figure, Paragraph, Ref, Text
from specgen.model.problem import refuse
from tests.documents.support import AWKWARD
from tests.support import EXAMPLES

PAPER = templates_folder() / "letterhead.docx"
SVG_BLIP = "{http://schemas.microsoft.com/office/drawing/2016/SVG/main}svgBlip"
SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="100mm" height="50mm" viewBox="0 0 100 50">'
    '<rect x="1" y="1" width="98" height="48" fill="none" stroke="#000"/><text x="9" y="9" font-size="3">A</text></svg>'
)
VALIDATOR = OpenXmlValidator(file_format=FileFormat.MICROSOFT_365, max_errors=0)


def figure(
    name: str = "sketch", caption: str = "Sketch of a wall", alt: str = "A wall, 3 ft high", wide: float = 100
) -> Figure:
    return Figure(name, (Text(caption),), SVG, alt, wide, wide / 2)


def document_with(*blocks: Any) -> Document:
    numbered, legend = number_blocks(blocks, "plain")
    return Document(id="D99", title="Trial", project="Trial", facts=(), blocks=numbered, legend=legend)


def body_of(content: bytes) -> Any:
    with zipfile.ZipFile(io.BytesIO(content)) as zipped:
        return etree.fromstring(zipped.read("word/document.xml"))


def test_figures_count_apart_from_all_else_and_are_referred_to_by_their_number() -> None:
    about = Paragraph((Text("See "), Ref("sketch"), Text(" and "), Ref("other"), Text(".")))
    document = document_with(Article((Text("A"),)), figure("other"), figure(), figure(), about)
    assert [b.number for b in document.blocks if isinstance(b, Figure)] == ["Figure 1", "Figure 2", "Figure 3"]
    assert text.write_text(document).endswith("See Figures 2 and 3 and Figure 1.\n")


def test_the_text_has_caption_and_description() -> None:
    assert text.write_text(document_with(figure())).endswith("Figure 1. Sketch of a wall\n[ A wall, 3 ft high ]\n")


def test_the_page_holds_the_drawing_itself_named_and_described() -> None:
    page = html.write_html(document_with(figure(caption=AWKWARD, alt=AWKWARD)), templates_folder()).decode()
    svg = parser.fromstring(page).find(".//figure/svg")
    assert svg.get("role") == "img"
    named, described = (svg.find(f".//*[@id='{id_}']").text for id_ in svg.get("aria-labelledby").split())
    assert (named, described) == (f"Figure 1. {AWKWARD}", AWKWARD)
    assert "<script" not in page
    assert "http" not in page.replace("http://www.w3.org/", "").split("<main", 1)[1]


def test_a_word_file_shows_the_picture_with_the_drawing_beside_it() -> None:
    content = word_file.write_docx(document_with(figure(alt=AWKWARD)), PAPER)
    part = docx.Document(io.BytesIO(content)).part
    body = body_of(content)
    (blip,) = body.iter(qn("a:blip"))
    raster = part.related_parts[blip.get(qn("r:embed"))]
    (drawn,) = body.iter(SVG_BLIP)
    vector = part.related_parts[drawn.get(qn("r:embed"))]
    assert (raster.content_type, str(raster.partname)) == ("image/png", "/word/media/figure1.png")
    assert (vector.content_type, str(vector.partname)) == ("image/svg+xml", "/word/media/figure1.svg")
    assert vector.blob.decode() == SVG
    assert raster.blob[:8] == b"\x89PNG\r\n\x1a\n"
    (named,) = body.iter(qn("wp:docPr"))
    assert (named.get("name"), named.get("descr")) == ("Figure 1", AWKWARD)


def test_a_picture_is_as_wide_as_its_drawing_on_paper() -> None:
    """100 mm are 3,600,000 EMU (ECMA-376 part 1: 360,000 to the centimeter)."""
    content = word_file.write_docx(document_with(figure()), PAPER)
    (extent,) = body_of(content).iter(qn("wp:extent"))
    assert (extent.get("cx"), extent.get("cy")) == ("3600000", "1800000")
    with zipfile.ZipFile(io.BytesIO(content)) as zipped:
        wide, high = struct.unpack(">II", zipped.read("word/media/figure1.png")[16:24])
    assert abs(wide / high - 2) < 0.01
    # Common practice, no source: 150 dots an inch print lines and lettering without steps to be seen.
    assert wide >= 100 / 25.4 * 150 - 1


def test_a_picture_wider_than_the_text_is_fitted_to_it() -> None:
    """A letter page with margins of an inch at most: 6.5 in to 8.5 in of text."""
    (extent,) = body_of(word_file.write_docx(document_with(figure(wide=400)), PAPER)).iter(qn("wp:extent"))
    assert 914400 * 6 <= int(extent.get("cx")) <= 914400 * 8.5
    assert abs(int(extent.get("cx")) / int(extent.get("cy")) - 2) < 1e-4


def test_the_caption_stands_below_and_stays_with_the_picture() -> None:
    content = word_file.write_docx(document_with(figure(), Paragraph((Text("after"),))), PAPER)
    paragraphs = docx.Document(io.BytesIO(content)).paragraphs
    places = [n for n, p in enumerate(paragraphs) if p._p.findall(f".//{qn('w:drawing')}")]
    picture, caption = paragraphs[places[0]], paragraphs[places[0] + 1]
    assert picture.paragraph_format.keep_with_next is True
    assert caption.text == "Figure\u00a01. Sketch of a wall"
    assert caption.paragraph_format.keep_with_next is False


def test_a_word_file_with_figures_is_valid(tmp_path: Path) -> None:
    file = tmp_path / "trial.docx"
    file.write_bytes(word_file.write_docx(document_with(figure(), figure(alt=AWKWARD), figure(wide=400)), PAPER))
    assert [str(e) for e in VALIDATOR.validate(file).errors] == []


def test_the_same_figures_give_the_same_bytes() -> None:
    document = document_with(figure(), figure())
    assert word_file.write_docx(document, PAPER) == word_file.write_docx(document, PAPER)


@pytest.fixture
def without_pictures(monkeypatch: pytest.MonkeyPatch) -> None:
    def find() -> Any:
        raise refuse("not installed")

    monkeypatch.setattr(png, "_find_writer", find)


@pytest.mark.usefixtures("without_pictures")
def test_without_a_library_for_pictures_a_word_file_says_what_the_figure_shows(tmp_path: Path) -> None:
    file = tmp_path / "trial.docx"
    file.write_bytes(word_file.write_docx(document_with(figure()), PAPER))
    cells = [cell.text for table in docx.Document(str(file)).tables for row in table.rows for cell in row.cells]
    assert cells == ["Figure\u00a01. Sketch of a wall", "A wall, 3\u00a0ft high"]
    assert [str(e) for e in VALIDATOR.validate(file).errors] == []


@pytest.mark.usefixtures("without_pictures")
@pytest.mark.parametrize(("formats", "told"), [(("docx",), 1), (("html", "txt"), 0)])
def test_the_build_says_once_what_to_install(tmp_path: Path, formats: tuple[str, ...], told: int) -> None:
    project = EXAMPLES / "clean" / "project.yaml"
    package = building.build(project, tmp_path / "out", formats, ("D08", "D09"))
    said = [note for note in package.notes if "its extra picture" in note]
    assert len(said) == told
