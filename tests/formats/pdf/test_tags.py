"""The tag tree of the pages, read by a second library: PDF/UA-1 (ISO 14289-1) with ISO 32000-1, 14.8."""

import pytest

from specgen.documents.catalogue import templates_folder
from specgen.formats import html
from specgen.model.block import Figure, Item, Table
from tests.documents.support import document_of
from tests.formats.pdf.support import plain, tagged, words_of_only_document, words_of_page
from tests.formats.pdf.tags import TaggedPdf

EVERY = ("D02", "D05", "D06", "D07", "D08", "D09", "D10", "D13")


@pytest.fixture(scope="module")
def whole() -> TaggedPdf:
    return tagged("clean", *EVERY)


def test_all_content_stands_in_the_tree_or_is_none(whole: TaggedPdf) -> None:
    assert whole.marked() == whole.used
    assert len(whole.used) > 1000
    assert [whole.unmarked_text(n) for n in range(len(whole.reader.pages))] == [""] * len(whole.reader.pages)


def test_headings_come_in_order(whole: TaggedPdf) -> None:
    levels = [int(tag.kind[1]) for tag in whole.tree.find("H1", "H2", "H3", "H4", "H5", "H6")]
    assert levels[0] == 1
    assert all(after - before <= 1 for before, after in zip(levels, levels[1:], strict=False))
    titles = [tag.text() for tag in whole.tree.find("H1")]
    assert titles == ["Contents", *(document_of("clean", name).title for name in EVERY)]


def test_each_table_has_header_cells_over_every_column(whole: TaggedPdf) -> None:
    tables = whole.tree.find("Table")
    written = sum(isinstance(block, Table) for name in EVERY for block in document_of("clean", name).blocks)
    assert len(tables) > written > 50
    for table in tables:
        (head,) = table.find("THead")
        (titles,) = head.find("TR")
        assert {tag.kind for tag in titles.parts} == {"TH"}
        rows = [row for body in table.find("TBody") for row in body.find("TR")]
        assert {len(row.parts) for row in rows} == {len(titles.parts)}


def test_figures_and_formulas_say_what_they_show(whole: TaggedPdf) -> None:
    figures = [b for name in EVERY for b in document_of("clean", name).blocks if isinstance(b, Figure)]
    shown = [tag.alt for tag in whole.tree.find("Figure") if tag.alt]
    assert [plain(alt) for alt in shown] == [plain(figure.alt) for figure in figures]
    formulas = whole.tree.find("Formula")
    assert formulas
    assert all(tag.alt for tag in formulas)


def test_items_are_items_of_lists_with_their_numbers(whole: TaggedPdf) -> None:
    numbers = [b.number for name in EVERY for b in document_of("clean", name).blocks if isinstance(b, Item)]
    labels = [tag.text() for tag in whole.tree.find("Lbl") if tag.text()]
    legend = [mark for name in EVERY for mark, _ in document_of("clean", name).legend]
    assert sorted(labels) == sorted([*numbers, *legend])
    assert all({tag.kind for tag in entry.parts} == {"Lbl", "LBody"} for entry in whole.tree.find("LI"))


def test_the_language_and_the_title_are_set(whole: TaggedPdf) -> None:
    assert whole.root["/Lang"] == "en-US"
    assert whole.root["/MarkInfo"]["/Marked"]
    assert whole.root["/ViewerPreferences"]["/DisplayDocTitle"]
    told = whole.reader.metadata
    assert (told.title, told.author) == (
        "Wickerwell Branch Library: Submittal 07 24 00-002",
        "Lark and Mallow Finishes",
    )
    assert told.creation_date.date().isoformat() == "2027-03-01"
    claimed = whole.root["/Metadata"].get_data().decode()
    assert "<pdfuaid:part>1</pdfuaid:part>" in claimed


@pytest.mark.parametrize("name", EVERY)
def test_the_words_are_those_of_the_html_page(name: str) -> None:
    document = document_of("clean", name)
    wanted = words_of_page(html.write_html(document, templates_folder()))
    assert len(wanted) > 1000
    assert words_of_only_document(tagged("clean", name)) == wanted


def test_the_bookmarks_lead_to_the_documents_and_their_parts(whole: TaggedPdf) -> None:
    tops = [entry for entry in whole.reader.outline if not isinstance(entry, list)]
    assert [entry.title for entry in tops] == ["Contents", *(document_of("clean", name).title for name in EVERY)]
    for entry, name in zip(tops[1:], EVERY, strict=True):
        page = whole.reader.get_destination_page_number(entry)
        assert document_of("clean", name).title in whole.reader.pages[page].extract_text()
