"""Attachments bound into the set: their order, their looks, and what is left out of them."""

import base64
import struct
import zlib
from collections.abc import Callable
from typing import Any

import pikepdf
import pypdf
import pytest

from specgen.model.problem import Refused
from tests.formats.pdf import made_papers
from tests.formats.pdf.binding import bind_behind, bound, objects, open_as, read, texts
from tests.formats.pdf.made_papers import make_paper

# A gray picture, 12 by 8 pixels.
JPEG = base64.b64decode(
    "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDACgcHiMeGSgjISMtKygwPGRBPDc3PHtYXUlkkYCZlo+AjIqgtObDoKrarYqMyP/L2u71////m8H////6"
    "/+b9//j/wAALCAAIAAwBAREA/8QAFAABAAAAAAAAAAAAAAAAAAAAAP/EABQQAQAAAAAAAAAAAAAAAAAAAAD/2gAIAQEAAD8AD//Z"
)


def png(width: int, height: int) -> bytes:
    """A black picture of one bit a pixel."""

    def part(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    rows = zlib.compress((b"\0" + bytes((width + 7) // 8)) * height, 9)
    head = struct.pack(">IIBBBBB", width, height, 1, 0, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + part(b"IHDR", head) + part(b"IDAT", rows) + part(b"IEND", b"")


def test_each_paper_stands_behind_its_divider_with_its_place_in_the_set() -> None:
    reader = bound(make_paper(2, "Report"), make_paper(1, "Letter"))
    assert texts(reader) == [
        "Ours 1",
        "Ours 2",
        "Report 1\nAttachment A1, page 1 of 2 · Page 3 of 6",
        "Report 2\nAttachment A1, page 2 of 2 · Page 4 of 6",
        "Ours 3",
        "Letter 1\nAttachment A2, page 1 of 1 · Page 6 of 6",
    ]
    assert reader.page_labels == ["1", "2", "3", "4", "5", "6"]


def test_a_paper_that_is_not_bound_in_leaves_its_divider() -> None:
    papers = [open_as("A1", make_paper(1, "Report")), made_papers_without("A2"), open_as("A3", make_paper(1, "Letter"))]
    assert [text.split("\n")[0] for text in texts(read(bind_behind(papers)))] == [
        "Ours 1",
        "Ours 2",
        "Report 1",
        "Ours 3",
        "Ours 4",
        "Letter 1",
    ]


def made_papers_without(mark: str) -> Any:
    from specgen.formats.pdf.attachments import Paper

    return Paper(mark=mark, name="absent.pdf")


def test_one_file_attached_twice_is_bound_in_twice() -> None:
    paper = open_as("A1", make_paper(1, "Report"))
    again = open_as("A2", make_paper(1, "Report"))
    same = type(again)(mark="A2", name=paper.name, document=paper.document)
    assert [text.split("\n")[-1] for text in texts(read(bind_behind([paper, same])))][2::2] == [
        "Attachment A1, page 1 of 1 · Page 3 of 5",
        "Attachment A2, page 1 of 1 · Page 5 of 5",
    ]


# A page 7 by 11 in whose box does not begin at zero: how it is turned, and its width and height as shown, in points.
@pytest.mark.parametrize(
    ("turned", "wide", "high"), [(0, 504, 792), (90, 792, 504), (180, 504, 792), (270, 792, 504), (-90, 792, 504)]
)
def test_a_stamp_stands_level_at_the_lower_edge_however_the_page_is_turned(turned: int, wide: int, high: int) -> None:
    reader = bound(make_paper(1, box=(100, -50, 604, 742), turned=turned))
    assert [float(side) for side in reader.pages[2].mediabox] == [100, -50, 604, 742]
    assert reader.pages[2].rotation % 360 == turned % 360
    page = pypdf.PdfWriter(clone_from=reader).pages[2]
    page.transfer_rotation_to_content()  # the second library turns the page, so that level is level
    found = []

    def look(text: str, turn: list[float], place: list[float], *rest: Any) -> None:
        if "Attachment" in text:
            found.append(pypdf.mult(place, turn))

    page.extract_text(visitor_text=look)
    across, slant, slope, up, x, y = found[0]
    left, low = float(page.mediabox.left), float(page.mediabox.bottom)
    assert (round(across, 3), round(slant, 3), round(slope, 3), round(up, 3)) == (1, 0, 0, 1)
    assert (round(page.mediabox.width), round(page.mediabox.height)) == (wide, high)
    assert 0 < y - low < 18  # within a quarter of an inch of the edge, where papers have their margin
    assert wide / 2 < x - left < wide - 100


@pytest.mark.parametrize("change", [None, made_papers.part_content])
def test_what_a_turned_page_shows_stays_where_it_is(change: Any) -> None:
    page = bound(make_paper(1, "Report", box=(100, -50, 604, 742), turned=90, change=change)).pages[2]
    look = page["/Resources"]["/XObject"]["/Paper"]
    assert "/Matrix" not in look
    assert [float(side) for side in look["/BBox"]] == [100, -50, 604, 742]
    assert b"172 350 Td (Report 1) Tj" in look.get_data()


def test_a_page_cut_by_its_crop_box_has_its_stamp_where_it_is_seen() -> None:
    def crop(made: pikepdf.Pdf) -> None:
        made.pages[0].cropbox = pikepdf.Array([100, 200, 500, 600])

    page = bound(make_paper(1, change=crop)).pages[2]
    found: list[tuple[float, float]] = []

    def look(text: str, turn: list[float], place: list[float], *rest: Any) -> None:
        if "Attachment" in text:
            found.append(tuple(pypdf.mult(place, turn)[4:]))

    page.extract_text(visitor_text=look)
    assert [float(side) for side in page.cropbox] == [100, 200, 500, 600]
    assert 300 < found[0][0] < 500
    assert 200 < found[0][1] < 218


def test_content_that_is_left_open_does_not_move_the_stamp() -> None:
    stamps = []
    for change in (None, made_papers.leave_open):
        page = bound(make_paper(1, change=change)).pages[2]
        stamps.append(page.get_contents().get_data())
    assert stamps[0] == stamps[1]
    assert b"q /Paper Do Q" in stamps[0]


# What acts in a paper, and what is told of it.
ACTIVE = [
    (made_papers.add_script, ("scripts",)),
    (made_papers.add_page_script, ("scripts",)),
    (made_papers.add_launch_link, ("launch actions",)),
    (made_papers.add_chained_launch, ("launch actions",)),
    (made_papers.add_embedded_file, ("embedded files",)),
    (made_papers.add_film, ("sound and film",)),
    (made_papers.add_filled_field, ("scripts",)),
    (made_papers.add_signature, ("a digital signature",)),
    (made_papers.add_other_form, ("a form of another kind (XFA)",)),
    (made_papers.add_web_link, ()),
]
# Keys and names by which a PDF acts.
ACTS = {
    "/JS",
    "/JavaScript",
    "/Launch",
    "/AA",
    "/OpenAction",
    "/EmbeddedFiles",
    "/EF",
    "/URI",
    "/RichMedia",
    "/AcroForm",
}


@pytest.mark.parametrize(("change", "told"), ACTIVE, ids=lambda value: getattr(value, "__name__", ""))
def test_what_acts_is_left_out_and_told(change: Callable[[pikepdf.Pdf], Any], told: tuple[str, ...]) -> None:
    source = make_paper(2, "Report", change=change)
    if told != ("a digital signature",):  # it acts in no way, and is told since it holds no longer
        assert words_in(read(source)) & ACTS
    paper = open_as("A1", source)
    assert paper.left_out == told
    reader = read(bind_behind([paper]))
    assert not words_in(reader) & ACTS
    assert texts(reader)[3].startswith("Report 2")


def words_in(reader: pypdf.PdfReader) -> set[str]:
    """Every key and name in the objects of a file."""
    found: set[str] = set()

    def look(value: Any) -> None:
        if isinstance(value, dict):
            found.update(map(str, value))
            for part in value.values():
                look(part)
        elif isinstance(value, list):
            for part in value:
                look(part)
        elif isinstance(value, pypdf.generic.NameObject):
            found.add(str(value))

    for one in objects(reader):
        look(one)
    return found


def test_what_was_filled_in_stays_to_be_read() -> None:
    assert "filled in" in texts(bound(make_paper(1, change=made_papers.add_filled_field)))[2]


def test_a_layer_that_is_off_stays_off() -> None:
    root = bound(make_paper(1, change=made_papers.add_hidden_layer)).trailer["/Root"]
    layers = root["/OCProperties"]
    assert [layer["/Name"] for layer in map(pypdf.generic.IndirectObject.get_object, layers["/D"]["/OFF"])] == [
        "Notes of the drafter"
    ]
    assert layers["/OCGs"] == layers["/D"]["/OFF"]


def test_a_place_of_a_paper_takes_the_name_of_none_of_ours() -> None:
    assert bound(make_paper(1, change=made_papers.add_name)).named_destinations == {}


def test_a_set_with_papers_of_others_does_not_claim_to_be_accessible() -> None:
    def claim(made: pikepdf.Pdf) -> None:
        with made.open_metadata(set_pikepdf_as_editor=False) as about:
            about["pdfuaid:part"] = "1"

    from specgen.documents.catalogue import templates_folder
    from specgen.formats.pdf.bind import merge_papers
    from specgen.formats.pdf.pages import SetPages

    ours = make_paper(2, "Ours", change=claim)
    assert b"pdfuaid:part" in read(ours).trailer["/Root"]["/Metadata"].get_data()
    made = merge_papers(SetPages(ours, 2, 3, {"A1": 1}), [open_as("A1", make_paper())], templates_folder())
    assert b"pdfuaid:part" not in read(made).trailer["/Root"]["/Metadata"].get_data()


def test_the_same_papers_make_the_same_bytes() -> None:
    made = [bind_behind([open_as("A1", make_paper(3)), open_as("A2", make_paper(2, turned=90))]) for _ in range(2)]
    assert made[0] == made[1]


def test_sixty_papers_of_many_pages_are_bound_in() -> None:
    papers = [open_as(f"A{number}", make_paper(20, f"Paper {number},")) for number in range(1, 61)]
    reader = read(bind_behind(papers))
    assert len(reader.pages) == 1 + 60 * 21
    assert reader.pages[-1].extract_text() == "Paper 60, 20\nAttachment A60, page 20 of 20 · Page 1261 of 1261"


@pytest.mark.parametrize("picture", [JPEG, png(12, 8)], ids=["jpeg", "png"])
def test_a_scanned_paper_is_a_page_across_as_it_is(picture: bytes) -> None:
    page = bound(picture).pages[2]
    assert (float(page.mediabox.width), float(page.mediabox.height)) == (792, 612)
    assert "Attachment A1, page 1 of 1" in page.extract_text()
    assert len(page.images) == 1


def test_a_picture_of_forty_megapixels_is_bound_in_and_a_larger_one_refused() -> None:
    assert len(bound(png(8000, 5000)).pages) == 3
    with pytest.raises(Refused, match="48 megapixels, at most 40"):
        open_as("A1", png(8000, 6000))


def test_a_mark_in_letters_that_the_stamp_lacks_is_left_to_the_divider() -> None:
    paper = open_as("Ж7", make_paper())
    assert texts(read(bind_behind([paper])))[2].endswith("Attachment, page 1 of 1 · Page 3 of 3")
