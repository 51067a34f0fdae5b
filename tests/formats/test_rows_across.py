"""A row of one cell stands across its table, heads the rows below it, and stays on the page of the first of them.

Expectations are ours, from how a table reads; the files are read back by other libraries.
"""

import io

from docx import Document as open_word
from lxml import html as parser

from specgen.documents.catalogue import templates_folder
from specgen.documents.columns import arrange_columns, count_row_lines
from specgen.formats.docx.word_file import write_docx
from specgen.formats.html import write_html
from specgen.formats.keeping import list_kept_rows
from specgen.formats.pdf.block_data import describe_table
from specgen.model.block import Document, Inlines, Table, Text

HEADS = ("Architect: Lintel and Quoin Architects. Needed before: mockup", "Engineer. Needed before: boards")


def words(text: str) -> Inlines:
    return (Text(text),)


BELOW = tuple((words("Width"), words(f"{number} in")) for number in range(8))
TABLE = Table((words("Value"), words("Answer")), ((words(HEADS[0]),), *BELOW, (words(HEADS[1]),), *BELOW), (60, 40))
TRIAL = Document(id="D99", title="Trial", project="Trial", facts=(), blocks=(TABLE,), legend=())


def test_on_a_page_it_heads_a_group_of_rows_across_all_columns() -> None:
    page = parser.fromstring(write_html(TRIAL, templates_folder()).decode("utf-8"))
    groups = page.xpath("//tbody")
    assert [group.xpath("string(tr[1]/th)") for group in groups] == list(HEADS)
    for group in groups:
        (head,) = group.xpath("tr[1]/*")
        assert (head.get("colspan"), head.get("scope")) == ("2", "rowgroup")
        assert len(group.xpath("tr")) == 1 + len(BELOW)


def test_in_a_word_file_it_is_one_cell_over_all_columns() -> None:
    word = open_word(io.BytesIO(write_docx(TRIAL, templates_folder() / "letterhead.docx")))
    table = next(one for one in word.tables if one.cell(0, 0).text == "Value")
    row = table.rows[1]
    assert [cell.text for cell in row.cells] == [HEADS[0]] * 2
    assert row.cells[0]._tc is row.cells[1]._tc
    assert all(run.bold for run in row.cells[0].paragraphs[0].runs)


def test_in_the_pdf_it_is_told_by_having_one_cell_and_narrows_no_column() -> None:
    told = describe_table(TABLE, 170.0)
    assert [len(row) for row in told["rows"]] == [1, *[2] * 8, 1, *[2] * 8]
    assert told["narrow"] == []


def test_it_stays_with_the_first_row_below_it() -> None:
    kept = list_kept_rows(TABLE, kept_below=False)
    # Behind it only the first row of a long table, and the last three, stay with the next: two short rows do not stand
    # alone on a page.
    assert [number for number, stays in enumerate(kept) if stays] == [0, 9, 15, 16]


def test_its_words_make_no_column_wider_and_take_the_width_of_the_table() -> None:
    bare = Table(TABLE.header, BELOW, TABLE.widths)
    assert arrange_columns(TABLE).widths == arrange_columns(bare).widths
    assert arrange_columns(TABLE).figures == arrange_columns(bare).figures == frozenset({1})
    assert count_row_lines((words(HEADS[0]),), (60, 40)) == 1
