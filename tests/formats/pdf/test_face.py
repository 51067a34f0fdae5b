"""The firm's letterhead on the pages of the PDF: head, foot and mark as on its Word pages."""

import io
from pathlib import Path
from typing import Any

import pypdf
import pytest
from PIL import Image

from specgen.formats.pdf.pages import write_pages
from tests.documents.support import document_of
from tests.formats.docx import letterheads as made
from tests.formats.pdf.support import plain, set_of
from tests.formats.pdf.tags import TaggedPdf
from tests.support import EXAMPLES


def pages_on(folder: Path, changes: dict[str, Any] | None = None, *names: str) -> list[pypdf.PageObject]:
    """The pages of documents of the clean example on the firm's paper with these parts changed."""
    file = made.kept(folder, made.firm(changes))
    content = write_pages(set_of("clean", *(names or ("D13",)), letterhead=file)).pdf
    return list(pypdf.PdfReader(io.BytesIO(content), strict=True).pages)


def words(pages: list[pypdf.PageObject]) -> list[str]:
    return [plain(page.extract_text()) for page in pages]


def test_head_foot_and_mark_stand_on_every_page(tmp_path: Path) -> None:
    pages = pages_on(tmp_path)
    assert len(pages) >= 3
    for page, text in zip(pages, words(pages), strict=True):
        assert plain("Sample Walls") in text
        assert plain("1 Nowhere Road") in text
        # A4 (ISO 216) in points.
        assert [round(float(side)) for side in page.mediabox[2:]] == [595, 842]
        (picture,) = page.images
        assert picture.image.size == (60, 20)


def test_our_own_lines_stand_beside_those_of_the_firm(tmp_path: Path) -> None:
    running = document_of("clean", "D13").running
    for number, text in enumerate(words(pages_on(tmp_path)), 1):
        assert plain(running[0]) in text
        assert plain(f"Page {number} of ") in text
        assert number < 3 or plain(running[1]) in text


def test_a_letterhead_that_counts_pages_counts_those_of_the_whole_set(tmp_path: Path) -> None:
    counted = made.header(
        made.words("Sheet ")
        + '<w:fldSimple w:instr=" PAGE "><w:r><w:t>9</w:t></w:r></w:fldSimple>'
        + made.words(" from ")
        + '<w:r><w:fldChar w:fldCharType="begin"/></w:r><w:r><w:instrText> NUMPAGES </w:instrText>'
        '</w:r><w:r><w:fldChar w:fldCharType="separate"/></w:r><w:r><w:t>99</w:t></w:r><w:r><w:fldChar '
        'w:fldCharType="end"/></w:r>',
        "ftr",
    )
    pages = pages_on(tmp_path, {"word/footer1.xml": counted})
    for number, text in enumerate(words(pages), 1):
        assert plain(f"Sheet {number} from {len(pages)}") in text
        assert plain("from 99") not in text
        assert plain("Page 1 of") not in text


def test_what_stands_on_the_first_page_of_a_document_alone_stands_there_alone(tmp_path: Path) -> None:
    first = '<w:headerReference w:type="first" r:id="rId9"/><w:headerReference w:type="default" r:id="rId2"/>'
    changes = {
        "word/document.xml": made.document(made.section(more="<w:titlePg/>", references=first)),
        "word/_rels/document.xml.rels": made.links(
            *made.MAIN_LINKS, *[("image", "media/image1.png")] * (8 - len(made.MAIN_LINKS)), ("header", "header2.xml")
        ),
        "word/header2.xml": made.header(made.words("Founded long ago")),
        "[Content_Types].xml": made.types(
            header2="application/vnd.openxmlformats-officedocument.wordprocessingml.header+xml"
        ),
    }
    file = made.kept(tmp_path, made.firm(changes))
    done = write_pages(set_of("clean", "D08", letterhead=file))
    texts = words(list(pypdf.PdfReader(io.BytesIO(done.pdf)).pages))
    shown = [number for number, text in enumerate(texts) if plain("Founded long ago") in text]
    assert shown == [0, 1, done.firsts["D08"]]


def test_the_text_begins_below_a_high_head(tmp_path: Path) -> None:
    lines = "".join(f"<w:p>{made.words(f'Line {n} of the head')}</w:p>" for n in range(12))
    high = f"<w:hdr {made.SPACES}>{lines}</w:hdr>"
    page = pages_on(tmp_path, {"word/header1.xml": high})[1]
    heights: dict[str, float] = {}

    def keep(text: str, current: list[float], matrix: list[float], *_: object) -> None:
        heights.setdefault(plain(text), matrix[4] * current[1] + matrix[5] * current[3] + current[5])

    page.extract_text(visitor_text=keep)
    head = [height for text, height in heights.items() if "ofthehead" in text]
    below = [height for text, height in heights.items() if text.startswith("d13") or "quantities" in text]
    assert len(head) == 12
    assert below
    assert max(below) < min(head)


def test_a_mark_of_forty_million_dots_becomes_as_fine_as_a_printer_shows(tmp_path: Path) -> None:
    large = io.BytesIO()
    Image.new("RGB", (8000, 5000), (20, 60, 90)).save(large, "PNG")
    page = pages_on(tmp_path, {"word/media/image1.png": large.getvalue()})[0]
    (picture,) = page.images
    # 1,440,000 English Metric Units are 40 mm (ECMA-376 part 1, 20.1.2.1), of 600 dots in an inch.
    assert picture.image.size[0] == round(40 / 25.4 * 600)


def test_a_damaged_picture_is_left_out_and_told(tmp_path: Path) -> None:
    broken = made.picture()[:40]
    file = made.kept(tmp_path, made.firm({"word/media/image1.png": broken}))
    done = write_pages(set_of("clean", "D13", letterhead=file))
    assert "a picture of the letterhead" in " ".join(done.told)
    texts = words(list(pypdf.PdfReader(io.BytesIO(done.pdf)).pages))
    assert all(plain("Sample Walls") in text for text in texts)


def test_what_repeats_on_every_page_is_no_content(tmp_path: Path) -> None:
    file = made.kept(tmp_path, made.firm())
    pdf = TaggedPdf(write_pages(set_of("clean", "D13", letterhead=file)).pdf)
    assert "Sample Walls" not in pdf.tree.text()
    assert pdf.marked() == pdf.used


@pytest.mark.parametrize("text", ["Thimble and Sons, plaster and spray, Netherquay", "All our papers are free to copy"])
def test_the_example_shows_its_own_face(text: str) -> None:
    letterhead = EXAMPLES / "own-face" / "letterhead.docx"
    content = write_pages(set_of("own-face", "D05", letterhead=letterhead)).pdf
    assert all(plain(text) in page for page in words(list(pypdf.PdfReader(io.BytesIO(content)).pages)))


def find_places(page: pypdf.PageObject) -> dict[str, tuple[float, float]]:
    """Where words begin, in points from the left and the lower edge."""
    places: dict[str, tuple[float, float]] = {}

    def keep(text: str, current: list[float], matrix: list[float], *_: object) -> None:
        x = matrix[4] * current[0] + matrix[5] * current[2] + current[4]
        places.setdefault(plain(text), (x, matrix[4] * current[1] + matrix[5] * current[3] + current[5]))

    page.extract_text(visitor_text=keep)
    return places


def test_tabs_lead_to_their_stops(tmp_path: Path) -> None:
    stops = '<w:tab w:val="center" w:pos="4500"/><w:tab w:val="right" w:pos="9000"/>'
    tab = "<w:r><w:tab/></w:r>"
    inner = (
        f"<w:pPr><w:tabs>{stops}</w:tabs></w:pPr>{made.words('first')}{tab}{made.words('mid')}{tab}{made.words('end')}"
    )
    places = find_places(pages_on(tmp_path, {"word/header1.xml": made.header(inner)})[1])
    # The margin is 1500 twentieths of a point; words end at the last stop and lie around the one before it.
    assert places["first"][0] == pytest.approx(75, abs=0.5)
    assert 75 + 225 - 15 < places["mid"][0] < 75 + 225
    assert 75 + 450 - 30 < places["end"][0] < 75 + 450
    assert len({round(places[word][1]) for word in ("first", "mid", "end")}) == 1


def test_a_table_of_the_head_keeps_its_cells_beside_each_other(tmp_path: Path) -> None:
    cells = "".join(f"<w:tc><w:p>{inner}</w:p></w:tc>" for inner in (made.drawing(), made.words("1 Nowhere Street")))
    grid = '<w:tblGrid><w:gridCol w:w="3000"/><w:gridCol w:w="6000"/></w:tblGrid>'
    table = f"<w:hdr {made.SPACES}><w:tbl>{grid}<w:tr>{cells}</w:tr></w:tbl><w:p/></w:hdr>"
    page = pages_on(tmp_path, {"word/header1.xml": table})[1]
    (picture,) = page.images
    assert picture.image.size == (60, 20)
    assert find_places(page)[plain("1 Nowhere Street")][0] > 75 + 100


@pytest.mark.parametrize("size", [24, 3000])
def test_a_head_however_high_leaves_room_for_the_text(tmp_path: Path, size: int) -> None:
    inner = f'<w:r><w:rPr><w:sz w:val="{size}"/></w:rPr><w:t>Great</w:t></w:r>'
    pages = pages_on(tmp_path, {"word/header1.xml": made.header(inner)})
    assert len(pages) < 8
    assert plain("Quantities and batch plan") in "".join(words(pages))
