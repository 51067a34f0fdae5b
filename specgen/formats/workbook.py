"""Sheets as one workbook (Office Open XML): typed cells, a head that stays, a filter, and a print set-up.

Every text is written as text, so that none runs as a formula. The library writes what begins and ends like a run of its
own markup as it stands; such a text is written in two runs.
"""

import datetime
import io
import textwrap
from collections.abc import Iterable
from typing import Any

from specgen.formats.xml_text import remove_non_xml
from specgen.model.problem import refuse
from specgen.model.sheet import Book, Sheet, SheetCell, SheetColumn

# What a cell, and the line above or below a printed page, can hold (ECMA-376, Part 1, 18.3.1.46 and 18.3.1.36; the
# length of a cell from memory).
MOST_TEXT = 32_767
_MOST_LINE = 255
# The height of a line in points, and the most of them: no row is higher than 409 points (from memory).
_LINE, _MOST_LINES = 15, 27
_LETTER, _A4 = 1, 9  # codes of paper sizes (ECMA-376, Part 1, 18.3.1.63)
_MARGINS = {"left": 0.5, "right": 0.5, "top": 0.75, "bottom": 0.75}  # in
# The day a file is said to be made where its package has none: the same input gives the same bytes.
_NO_DAY = datetime.date(2000, 1, 1)
GRID = {"border": 1, "border_color": "#BFBFBF", "valign": "top"}
HEAD = {"bold": True, "text_wrap": True, "bg_color": "#E7E6E6"}


def write_workbook(book: Book) -> bytes:
    """The file of a book; raises Refused where the library is not installed."""
    stream = io.BytesIO()
    workbook = open_workbook(stream, book.title, book.author, book.day)
    for sheet in book.sheets:
        page = workbook.add_worksheet(sheet.name)
        _fill(workbook, page, sheet)
        page.repeat_rows(0)
        set_print(page, book.head, book.foot, book.metric)
    workbook.close()
    return stream.getvalue()


def open_workbook(stream: io.BytesIO, title: str, author: str, day: datetime.date | None) -> Any:
    """A workbook that is written to the stream when it is closed; raises Refused where the library is not installed."""
    try:
        import xlsxwriter
    except ImportError:
        hint = "install specgen with its extra sheets, or leave xlsx out of --formats"
        raise refuse("a workbook needs a library that is not installed", hint) from None
    workbook = xlsxwriter.Workbook(stream, {"in_memory": True})
    made = datetime.datetime.combine(day or _NO_DAY, datetime.time())
    workbook.set_properties({"title": remove_non_xml(title), "author": remove_non_xml(author), "created": made})
    return workbook


def _fill(workbook: Any, page: Any, sheet: Sheet) -> None:
    """Head, cells, frozen row and filter."""
    widths = [column.width for column in sheet.columns]
    for place, column in enumerate(sheet.columns):
        look = workbook.add_format(GRID | _look(column))
        head = workbook.add_format(GRID | HEAD | ({"align": "right"} if column.kind == "number" else {}))
        page.set_column(place, place, column.width)
        page.write_string(0, place, column.title, head)
        for number, row in enumerate(sheet.rows, 1):
            write_cell(page, number, place, row[place], look)
    for number, texts in enumerate([[column.title for column in sheet.columns], *sheet.rows]):
        page.set_row(number, find_height(texts, widths))
    page.freeze_panes(1, 0)
    last = len(sheet.columns) - 1
    if sheet.rows:
        page.autofilter(0, 0, len(sheet.rows), last)
        # A paragraph such as 1.5 is a text, and stands without a mark of doubt.
        page.ignore_errors({"number_stored_as_text": f"A2:{_letter(last)}{len(sheet.rows) + 1}"})
    else:
        page.write_string(1, 0, sheet.empty)


def _look(column: SheetColumn) -> dict[str, Any]:
    if column.kind == "date":
        return {"num_format": "yyyy-mm-dd", "align": "left"}
    if column.kind == "number":
        return {} if column.decimals is None else {"num_format": f"#,##0.{'0' * column.decimals}"}
    return {"text_wrap": True, "num_format": "@"}


def find_height(cells: Iterable[SheetCell], widths: Iterable[int]) -> int:
    """The height of a row in points, by its highest cell: not every program finds what wrapped words need."""
    room = ((cell, width) for cell, width in zip(cells, widths, strict=True) if isinstance(cell, str))
    lines = (len(textwrap.wrap(cell, width)) for cell, width in room if len(cell) > width)
    return _LINE * min(max(lines, default=1), _MOST_LINES)


def write_cell(page: Any, row: int, place: int, cell: SheetCell, look: Any) -> None:
    """Write a value as what it is, a text as text whatever it begins with; row and place count from 0."""
    if cell is None or cell == "":
        page.write_blank(row, place, None, look)
    elif isinstance(cell, datetime.date):
        page.write_datetime(row, place, cell, look)
    elif not isinstance(cell, str):
        page.write_number(row, place, cell, look)
    else:
        text = _cut(remove_non_xml(cell), MOST_TEXT)
        if text.startswith("<r>") and text.endswith("</r>"):
            page.write_rich_string(row, place, text[:1], look, text[1:], look)
        else:
            page.write_string(row, place, text, look)


def set_print(page: Any, head: tuple[str, str], foot: str, metric: bool, wide: int = 1) -> None:
    """Landscape, so many pages wide, A4 or letter; a line above with a left and a right, one below with the count."""
    page.set_landscape()
    page.set_paper(_A4 if metric else _LETTER)
    page.set_margins(**_MARGINS)
    page.fit_to_pages(wide, 0)
    left, right = (_spell(text) for text in head)
    half = _MOST_LINE // 2 - len("&L")
    page.set_header(f"&L{_cut_line(left, half)}&R{_cut_line(right, half)}")
    page.set_footer(f"&L{_cut_line(_spell(foot), half)}&C&A&RPage &P of &N")


def _spell(text: str) -> str:
    """The text within a line of a page, where an ampersand begins a code."""
    return " ".join(remove_non_xml(text).split()).replace("&", "&&")


def _cut_line(text: str, most: int) -> str:
    """At most so many characters of a line, without half an ampersand at its end."""
    cut = _cut(text, most)
    return cut if cut == text or (len(cut) - 1 - len(cut[:-1].rstrip("&"))) % 2 == 0 else f"{cut[:-2]}…"


def _cut(text: str, most: int) -> str:
    return text if len(text) <= most else f"{text[: most - 1]}…"


def _letter(place: int) -> str:
    """The letter of one of the first 26 columns."""
    return chr(ord("A") + place)
