"""The pages of a set: their number and order, their running lines, their sheets, and what they are made of."""

import dataclasses
import io
from pathlib import Path

import pypdf
import pytest

from specgen.formats.pdf.divider import Divider
from specgen.formats.pdf.pages import name_file, write_pages
from specgen.model.block import Document, Figure, Paragraph, Text
from tests.documents.support import document_of, written
from tests.formats.pdf.support import pages_of, plain, set_of, small_set, tagged

DIVIDERS = (
    Divider("PD1", "Data sheet of the membrane", ("Product data", "Answers item 3, paragraph 1.04 A"), 4),
    Divider("TR2", "Test report", ("It could not be bound in.",), 0),
    Divider("LT1", "Letter", (), 3),
)
NAMES = ("D02", "D08", "D13")


def opened(content: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(content), strict=True)


def test_pages_are_counted_over_the_whole_set_with_what_is_bound_in() -> None:
    made = pages_of("clean", *NAMES, dividers=DIVIDERS)
    pages = opened(made.pdf).pages
    assert (made.count, made.total) == (len(pages), len(pages) + 7)
    shown = [page.extract_text() for page in pages]
    # Behind the first divider lie four pages, behind the second none.
    numbers = [*range(1, len(pages) - 1), len(pages) + 3, len(pages) + 4]
    for text, number in zip(shown, numbers, strict=True):
        assert f"Page {number} of {made.total}" in text


def test_each_document_and_divider_begins_where_it_is_said_to() -> None:
    made = pages_of("clean", *NAMES, dividers=DIVIDERS)
    shown = [page.extract_text() for page in opened(made.pdf).pages]
    assert list(made.firsts) == [*NAMES, "PD1", "TR2", "LT1"]
    assert list(made.firsts.values())[-3:] == [made.count - 3, made.count - 2, made.count - 1]
    for name in NAMES:
        page = made.firsts[name]
        assert document_of("clean", name).title in shown[page]
        running = plain(f"{name} {document_of('clean', name).title} | Revision 0")
        assert running in plain(shown[page])
        assert running not in plain(shown[page - 1])
    divider = shown[made.firsts["PD1"]]
    assert all(line in divider for line in (DIVIDERS[0].title, *DIVIDERS[0].lines))


def test_the_contents_give_the_page_of_each_document_and_attachment() -> None:
    made = pages_of("clean", *NAMES, dividers=DIVIDERS)
    lines = opened(made.pdf).pages[1].extract_text().splitlines()
    numbers = [str(made.firsts[name] + 1) for name in (*NAMES, "PD1")]
    numbers += [str(made.firsts[mark] + 5) for mark in ("TR2", "LT1")]
    titles = [*(document_of("clean", name).title for name in NAMES), *(divider.title for divider in DIVIDERS)]
    for title, number in zip(titles, numbers, strict=True):
        assert any(title in line and line.rstrip().endswith(number) for line in lines), (title, number, lines)


def test_the_transmittal_stands_before_the_contents(tmp_path: Path) -> None:
    first, last = (dataclasses.replace(written(tmp_path, "word\n"), id=id_, title=id_) for id_ in ("D00", "D01"))
    made = write_pages(small_set(tmp_path, first, last))
    assert made.firsts == {"D00": 3, "D01": 1}
    assert "Contents" in opened(made.pdf).pages[2].extract_text()


def test_a_short_draft_opens_with_its_answer_which_alone_bears_the_title_block(tmp_path: Path) -> None:
    facts = (("Project", "Trial"), ("Owner", "Almsgrove Building"))
    made = [
        dataclasses.replace(written(tmp_path, "word\n", draft=True), id=name, title=name, facts=facts)
        for name in ("D00", "D02")
    ]
    pages = opened(write_pages(small_set(tmp_path, *made)).pdf).pages
    assert len(pages) == 2
    assert ["Almsgrove Building" in page.extract_text() for page in pages] == [True, False]
    # A longer one is found by its contents.
    more = [dataclasses.replace(made[1], id=f"D{number:02}") for number in range(3, 9)]
    assert "Contents" in opened(write_pages(small_set(tmp_path, *made, *more)).pdf).pages[1].extract_text()


def test_the_cover_names_project_submittal_parties_and_date() -> None:
    cover = plain(opened(pages_of("clean", *NAMES, dividers=DIVIDERS).pdf).pages[0].extract_text())
    told = ("Wickerwell Branch Library", "Submittal 07 24 00-002", "07 24 00, 09 96 00", "March 1, 2027")
    parties = ("Lark and Mallow Finishes", "Lintel and Quoin Architects", "Almsgrove Building", "City of Wickerwell")
    assert [text for text in (*told, *parties) if plain(text) not in cover] == []


def test_a_draft_is_marked_on_every_page() -> None:
    pages = tagged("clean", "D08", draft=True).reader.pages
    assert len(pages) > 10
    assert all("DRAFT, NOT FOR SUBMISSION" in page.extract_text() for page in pages)
    assert not any("DRAFT" in page.extract_text() for page in tagged("clean", "D13").reader.pages)


def test_fonts_are_embedded_and_none_is_of_the_system() -> None:
    found = {}
    for number in range(len(tagged("clean", "D06").reader.pages)):
        for font in tagged("clean", "D06").reader.pages[number]["/Resources"]["/Font"].values():
            (inner,) = font.get_object()["/DescendantFonts"]
            descriptor = inner.get_object()["/FontDescriptor"].get_object()
            name = str(descriptor["/FontName"]).partition("+")[2]
            found[name] = any(key.startswith("/FontFile") for key in descriptor)
    assert all(found.values())
    assert {"SheetSans-Regular", "SheetSans-Bold"} <= set(found)
    assert all(name.startswith(("SheetSans", "NewCM", "LibertinusSerif")) for name in found), found


def test_the_same_input_gives_the_same_bytes() -> None:
    assert write_pages(set_of("clean", "D13")).pdf == write_pages(set_of("clean", "D13")).pdf


def figure(width: float, height: float) -> Figure:
    """A drawing with a letter at its left edge, and one that begins 100 mm from it."""
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}">'
    )
    letters = "".join(
        f'<text x="{x}" y="50" font-family="Sheet Sans" font-size="5">{letter}</text>'
        for x, letter in ((0, "Q"), (100, "Z"))
    )
    return Figure("trial", (Text("A wall"),), f"{head}{letters}</svg>", "A wall in words", width, height, "Figure 1")


def find_letters(page: pypdf.PageObject) -> dict[str, float]:
    """Where the two letters begin, in points from the left edge of the page."""
    places = {}

    def keep(text: str, current: list[float], matrix: list[float], *_: object) -> None:
        if text.strip() in {"Q", "Z"}:
            places[text.strip()] = matrix[4] * current[0] + matrix[5] * current[2] + current[4]

    page.extract_text(visitor_text=keep)
    return places


# Tabloid is 11 by 17 in (ANSI/ASME Y14.1, size B); millimeters of a drawing, points of its sheet.
@pytest.mark.parametrize(
    ("size", "sheet"), [((160, 100), (612, 792)), ((380, 220), (1224, 792)), ((431.8, 279.4), (1224, 792))]
)
def test_a_drawing_stands_at_its_true_size(tmp_path: Path, size: tuple[float, float], sheet: tuple[int, int]) -> None:
    around = [Paragraph((Text(word),)) for word in ("before", "after")]
    document = dataclasses.replace(written(tmp_path, "# A\n"), blocks=(around[0], figure(*size), around[1]))
    pages = opened(write_pages(small_set(tmp_path, document)).pdf).pages
    (shown,) = [page for page in pages if len(find_letters(page)) == 2]
    assert [round(float(side)) for side in shown.mediabox[2:]] == list(sheet)
    places = find_letters(shown)
    assert places["Z"] - places["Q"] == pytest.approx(100 / 25.4 * 72, abs=0.1)


@dataclasses.dataclass(frozen=True, slots=True, kw_only=True)
class Changed(Document):
    """A document with marks beside some of its blocks."""

    changed: frozenset[int] = frozenset()


def count_bars(content: bytes) -> int:
    """The bars on the last page that are 2 points wide."""
    page = opened(content).pages[-1]
    operations = pypdf.generic.ContentStream(page.get_contents(), page.pdf).operations
    return sum(operator == b"l" and [float(side) for side in operands] == [-1, 0] for operands, operator in operations)


def test_changed_blocks_have_a_line_at_their_left(tmp_path: Path) -> None:
    document = written(tmp_path, "one\n\n1. two\n2. three\n\nfour\n")
    fields = {field.name: getattr(document, field.name) for field in dataclasses.fields(Document)}
    made = [
        write_pages(small_set(tmp_path, Changed(**fields | {"changed": frozenset(places)}))).pdf
        for places in ((), (0,), (0, 2))
    ]
    counts = [count_bars(content) for content in made]
    assert [count - counts[0] for count in counts] == [0, 1, 2]


def test_the_file_is_named_by_number_and_revision(tmp_path: Path) -> None:
    assert name_file(set_of("clean", "D13")) == "submittal-07-24-00-002-r0.pdf"
    assert name_file(small_set(tmp_path)) == "submittal.pdf"
    odd = {"package": {"purpose": "design_draft", "number": "../A: 3/4 *", "revision": 2}}
    assert name_file(small_set(tmp_path, change=odd)) == "submittal-A-3-4-r2.pdf"
