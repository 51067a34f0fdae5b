"""The workbook, read back by a second library and held against the published schemas."""

import datetime
import io
import sys
import zipfile
from pathlib import Path
from typing import Any

import pytest

from specgen.formats.workbook import write_workbook
from specgen.model.problem import Refused
from specgen.model.sheet import Sheet, SheetColumn
from tests.formats.docx.validator import findings
from tests.formats.sheets import AWKWARD, LIKE_FORMULAS, book_of, page_of, read_back, sheet_of, texts

DAY = datetime.date(2027, 3, 9)
ROW = ("I1", DAY, 12.5)


def test_cells_come_back_with_their_types() -> None:
    text, day, number = page_of(sheet_of(ROW))[2]
    assert (text.value, text.data_type) == ("I1", "s")
    assert (day.value, day.is_date, day.number_format) == (datetime.datetime(2027, 3, 9), True, "yyyy-mm-dd")
    assert (number.value, number.data_type, number.number_format) == (12.5, "n", "#,##0.00")


def test_a_cell_left_to_fill_in_has_the_form_of_its_column() -> None:
    day = page_of(sheet_of(("I1", None, None)))["B2"]
    assert (day.value, day.number_format) == (None, "yyyy-mm-dd")


@pytest.mark.parametrize("text", [*LIKE_FORMULAS, *AWKWARD])
def test_a_text_is_never_a_formula_and_comes_back_as_it_was(text: str) -> None:
    cell = page_of(texts(text))["A2"]
    assert (cell.value, cell.data_type, cell.hyperlink) == (text, "s", None)


def test_what_xml_cannot_hold_is_left_out_and_what_a_cell_cannot_hold_is_cut() -> None:
    page = page_of(texts("a\x00b\x0bc\ud800d￾", "x" * 40_000))
    assert page["A2"].value == "abcd"
    assert (len(page["A3"].value), page["A3"].value[-1]) == (32_767, "…")


def test_the_head_stays_and_filters_and_repeats_on_every_page() -> None:
    page = page_of(sheet_of(ROW, ROW))
    assert [cell.value for cell in page[1]] == ["Item", "Due", "Width, in"]
    assert page.freeze_panes == "A2"
    assert page.auto_filter.ref == "A1:C3"
    assert page.print_title_rows == "$1:$1"


@pytest.mark.parametrize(("metric", "paper"), [(False, "1"), (True, "9")])
def test_pages_lie_on_their_side_as_wide_as_the_sheet(metric: bool, paper: str) -> None:
    page = page_of(sheet_of(ROW), metric=metric)
    set_up = page.page_setup
    assert (set_up.orientation, str(set_up.paperSize), set_up.fitToHeight) == ("landscape", paper, 0)
    assert page.sheet_properties.pageSetUpPr.fitToPage
    assert (set_up.fitToWidth or 1) == 1


def test_the_lines_of_a_page_name_project_and_revision_and_count_it() -> None:
    page = page_of(sheet_of(ROW), head=("Hall & Sons\n| Submittal 3", "Draft of revision 1"))
    assert (page.oddHeader.left.text, page.oddHeader.right.text) == (
        "Hall && Sons | Submittal 3",
        "Draft of revision 1",
    )
    assert (page.oddFooter.left.text, page.oddFooter.center.text) == ("March 1, 2027", "&A")
    assert page.oddFooter.right.text == "Page &P of &N"


@pytest.mark.parametrize("name", ["&" * 300, "a" + "&" * 300, "W" * 300])
def test_a_long_name_is_cut_so_that_the_line_of_a_page_holds_it(name: str) -> None:
    content = write_workbook(book_of(sheet_of(ROW), head=(name, name)))
    with zipfile.ZipFile(io.BytesIO(content)) as parts:
        page = parts.read("xl/worksheets/sheet1.xml").decode()
    line = page.partition("<oddHeader>")[2].partition("</oddHeader>")[0].replace("&amp;", "&")
    assert line.startswith("&L")
    assert 200 < len(line) <= 255
    left = line[2:].partition("&R")[0]
    assert left.endswith("…")
    assert left.count("&") % 2 == 0


def test_an_empty_sheet_has_its_head_and_says_so() -> None:
    page = page_of(Sheet("Submittal register", (SheetColumn("Item", 10),), (), "No items in the register"))
    assert [[cell.value for cell in row] for row in page.rows] == [["Item"], ["No items in the register"]]
    assert page.auto_filter.ref is None


def test_a_row_is_as_high_as_its_words_need() -> None:
    page = page_of(texts("short", "words of a long title that wrap to more than two lines"))
    line = page.sheet_format.defaultRowHeight
    assert (page.row_dimensions[2].height or line) == line == 15
    assert page.row_dimensions[3].height >= 3 * line


def test_ten_thousand_rows_come_back() -> None:
    page = page_of(sheet_of(*((f"I{n}", DAY, n) for n in range(10_000))))
    assert page.max_row == 10_001
    assert [cell.value for cell in page[10_001]] == ["I9999", datetime.datetime(2027, 3, 9), 9999]
    assert page.auto_filter.ref == "A1:C10001"


def test_the_file_says_what_it_is_and_when_from_the_package_alone() -> None:
    content = write_workbook(book_of(sheet_of(ROW)))
    about = read_back(content).properties
    assert (about.title, about.creator) == ("Trial: lists", "Lark")
    assert about.created == about.modified == datetime.datetime(2027, 3, 1)
    with zipfile.ZipFile(io.BytesIO(content)) as parts:
        assert {part.date_time[0] for part in parts.infolist()} == {1980}
    undated = read_back(write_workbook(book_of(sheet_of(ROW), day=None))).properties
    assert undated.created == datetime.datetime(2000, 1, 1)


def test_a_workbook_is_valid(tmp_path: Path) -> None:
    full = sheet_of(ROW, *((text, None, None) for text in (*LIKE_FORMULAS, *AWKWARD)))
    file = tmp_path / "trial.xlsx"
    file.write_bytes(write_workbook(book_of(full, sheet_of(name="Empty"))))
    assert findings(file) == []


def test_what_is_wrong_with_a_workbook_is_found(tmp_path: Path) -> None:
    file = tmp_path / "trial.xlsx"
    with (
        zipfile.ZipFile(io.BytesIO(write_workbook(book_of(sheet_of(ROW))))) as source,
        zipfile.ZipFile(file, "w") as out,
    ):
        for name in source.namelist():
            out.writestr(name, source.read(name).replace(b"<sheetData>", b"<sheetDates/><sheetData>"))
    assert findings(file) != []


def test_without_the_library_it_says_what_to_install(monkeypatch: Any) -> None:
    monkeypatch.setitem(sys.modules, "xlsxwriter", None)
    with pytest.raises(Refused, match="install specgen with its extra sheets"):
        write_workbook(book_of(sheet_of(ROW)))
