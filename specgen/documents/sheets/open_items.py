"""The open items by the party that owes them, each in a row of its own; of an issued set what is still to be done."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.parties import find_name, name_role
from specgen.documents.views import still_due
from specgen.documents.views.open_items import OpenLine, list_lines
from specgen.model.sheet import Sheet, SheetCell, SheetColumn

DOCUMENT, ORDER = "D19", 30
_COLUMNS = (
    SheetColumn("Document", 10),
    SheetColumn("From", 20),
    SheetColumn("Name", 24),
    SheetColumn("Needed before", 22),
    SheetColumn("Subject", 20),
    SheetColumn("Value or document", 60),
    SheetColumn("Holds up", 18),
    SheetColumn("Answer", 24),
    SheetColumn("Date", 12, "date"),
)


def make_sheet(context: DocumentContext) -> Sheet:
    """One row for each item; answer and date are left to be filled in."""
    rows = tuple(_set_row(context, line) for line in list_lines(context))
    rows += tuple(map(_set_due, still_due.rows(context, Composer()).rows))
    return Sheet("Open items", _COLUMNS, rows, "No open items")


def _set_due(line: tuple[Any, ...]) -> tuple[SheetCell, ...]:
    item, by, before = ("".join(map(str, cell)) if isinstance(cell, list) else str(cell) for cell in line)
    return (None, None, by, before, None, item, None, None, None)


def _set_row(context: DocumentContext, line: OpenLine) -> tuple[SheetCell, ...]:
    path = find_name(context, line.party)
    name: SheetCell = context.project.get(path) if path else None
    numbers = line.numbers or None
    return (numbers, name_role(line.party), name, line.before, line.subject, line.item, line.holds or None, None, None)
