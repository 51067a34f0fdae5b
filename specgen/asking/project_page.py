"""The sheet `Project` of a workbook: what it belongs to, whom it is for, and the cells for who answers."""

import datetime
from typing import Any

from specgen.asking import answer_sheet as places
from specgen.asking.questions import PartySheet
from specgen.asking.sheet_book import SheetBook
from specgen.documents.context import DocumentContext
from specgen.formats.workbook import set_print
from specgen.model.sheet import SheetCell

# The width of each column in characters.
_WIDTHS = (20, 70)
_FILLED = (places.ANSWERED_BY, places.ANSWERED_ON)
_WHO = "Enter who answers, and the date as year-month-day. Save the workbook, and return it as it is named."
_NO_PARTY = "The project that this table belongs to. Leave as it is."


def tell_party(sheet: PartySheet) -> str:
    """`Architect, Larch Office`, or the role by itself."""
    return f"{sheet.title}, {sheet.name}" if sheet.name else sheet.title


def add_project_page(
    book: SheetBook, context: DocumentContext, title: str, sheet: PartySheet | None, table: str = "", part: int = 1
) -> None:
    """The sheet of a workbook for this party, if any; `table` is the name of the one that the workbook is of."""
    page = book.add_sheet(places.name_page(places.PROJECT, part), _WIDTHS)
    book.write_heading(page, title, _WHO if sheet else _NO_PARTY, _WIDTHS)
    told = _tell_project(context, table) | (_tell_answering(sheet) if sheet else {})
    rows = [(label, told[label]) for label in places.PROJECT_LABELS if label in told]
    for row, cells in enumerate(rows, places.PROJECT_FIRST):
        book.write_row(page, row, cells, ("head", "answer" if cells[0] in _FILLED else "text"))
        book.set_height(page, row, cells, _WIDTHS)
    page.ignore_errors({"number_stored_as_text": "B1:B20"})
    set_lines(page, context, title)


def _tell_project(context: DocumentContext, table: str) -> dict[str, SheetCell]:
    project = context.project
    file = next((one.name for one in project.inputs if one.use == "project"), "")
    told: dict[str, SheetCell] = {
        places.PROJECT_NAME: str(project.value(("project", "name"))),
        places.PROJECT_NUMBER: str(project.get(("project", "number")) or ""),
        places.PROJECT_FILE: file,
        places.FORMAT: places.FORMAT_VERSION,
    }
    return told | ({places.TABLE: table} if table else {})


def _tell_answering(sheet: PartySheet) -> dict[str, SheetCell]:
    return {
        places.PARTY: tell_party(sheet),
        places.PARTY_ROLE: sheet.role,
        places.RETURN_TO: sheet.return_to,
        places.RETURN_BY: sheet.return_by.isoformat() if isinstance(sheet.return_by, datetime.date) else "",
        places.ANSWERED_BY: None,
        places.ANSWERED_ON: None,
    }


def set_lines(page: Any, context: DocumentContext, title: str) -> None:
    """The lines at head and foot of a printed sheet: the project and a title."""
    project = context.project
    name, number = str(project.value(("project", "name"))), project.get(("project", "number"))
    set_print(page, (f"{name} | {number}" if number else name, title), "", context.first == "si")
