"""Sheets made for the tests of their writers, and a workbook as a second library reads it."""

import datetime
import io
from typing import Any

import openpyxl

from specgen.formats.workbook import write_workbook
from specgen.model.sheet import Book, Sheet, SheetCell, SheetColumn

COLUMNS = (SheetColumn("Item", 10), SheetColumn("Due", 12, "date"), SheetColumn("Width, in", 12, "number", 2))
# Texts that a spreadsheet would run, or take for its own, and what no XML and no line of CSV may hold as it stands.
LIKE_FORMULAS = ("=1+1", "+1", "-1", "@SUM(A1)", "\t=1", " =1", "'=1", "''+1", "＝1", '=HYPERLINK("a","b")')
AWKWARD = (
    "<r>a</r>",
    "<r><t>b</t></r>",
    "_x0041_",
    'quote " and , and ;',
    "a&b <c>",
    "שלום W1 (אב)",
    "two\nlines",
    "'a",
)


def sheet_of(*rows: tuple[SheetCell, ...], name: str = "Trial") -> Sheet:
    return Sheet(name, COLUMNS, rows, "No items in the trial")


def texts(*words: str) -> Sheet:
    """A sheet with each text in a row of its own."""
    return sheet_of(*((word, None, None) for word in words))


def book_of(*sheets: Sheet, **told: Any) -> Book:
    about: dict[str, Any] = {
        "title": "Trial: lists",
        "author": "Lark",
        "head": ("Trial | Submittal 3", "Revision 1"),
        "foot": "March 1, 2027",
        "metric": False,
        "day": datetime.date(2027, 3, 1),
    }
    return Book(**about | told, sheets=sheets)


def read_back(content: bytes) -> Any:
    """The workbook as the second library reads it."""
    return openpyxl.load_workbook(io.BytesIO(content))


def page_of(sheet: Sheet, **told: Any) -> Any:
    """The first sheet of a book, read back."""
    return read_back(write_workbook(book_of(sheet, **told))).worksheets[0]
