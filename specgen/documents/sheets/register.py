"""The submittal register with dates as dates; what is filled in as the review goes on is left empty."""

from specgen.documents.context import DocumentContext
from specgen.documents.register import Column, make_register
from specgen.model.sheet import Sheet, SheetColumn

DOCUMENT, ORDER = "D03", 10
# A share of the printed page, in percent, is about this many characters of a sheet that fits the same page.
_CHARACTERS = 1.2


def make_sheet(context: DocumentContext) -> Sheet:
    """One row for each item of the contract by section and paragraph."""
    register = make_register(context)
    columns = tuple(SheetColumn(c.title, _find_width(c), c.kind) for c in register.columns)
    return Sheet("Submittal register", columns, tuple(row.cells for row in register.rows), "No items in the register")


def _find_width(column: Column) -> int:
    """Characters for the share of the page, and for the longest word of the title."""
    return max(round(column.width * _CHARACTERS), 2 + max(map(len, column.title.split())))
