"""The submittal register with dates as dates; what is filled in as the review goes on is left empty."""

from specgen.documents.context import DocumentContext
from specgen.documents.register import make_register
from specgen.model.sheet import Sheet, SheetColumn

DOCUMENT, ORDER = "D03", 10
# A share of the printed page, in percent, is about this many characters of a sheet that fits the same page.
_CHARACTERS = 1.5
_LEAST = 10


def make_sheet(context: DocumentContext) -> Sheet:
    """One row for each item of the contract by section and paragraph."""
    register = make_register(context)
    columns = tuple(SheetColumn(c.title, max(_LEAST, round(c.width * _CHARACTERS)), c.kind) for c in register.columns)
    return Sheet("Submittal register", columns, tuple(row.cells for row in register.rows), "No items in the register")
