"""The questions to one party as a workbook, to be filled in and sent back."""

import datetime

from specgen.asking import answer_sheet as places
from specgen.asking.questions import PartySheet, Question, Wanted
from specgen.asking.sheet_book import SheetBook
from specgen.documents.context import DocumentContext
from specgen.formats.workbook import set_print
from specgen.model.sheet import SheetCell
from specgen.model.value_text import long_date

# The width of each column in characters, and the format of its cells.
_QUESTIONS = (
    (5, "text"),
    (42, "text"),
    (30, "text"),
    (24, "text"),
    (13, "text"),
    (20, "text"),
    (11, "date"),
    (26, "answer"),
    (20, "answer"),
    (28, "small"),
)
_DOCUMENTS = ((5, "text"), (70, "text"), (26, "text"), (11, "date"), (14, "answer"), (30, "answer"))
_PROJECT = ((20, "head"), (70, "text"))
_ANSWERS = (
    "Fill in the column Answer, with the unit; leave blank what is not known. Write anything else under Remark, and "
    "who answers on the sheet Project."
)
_SEND = "Send each document as a file, and each other item in a reply. They answer no question of the sheet Questions."
_WHO = "Enter who answers, and the date as year-month-day. Save the workbook, and return it as it is named."
_NONE = "No questions; see the sheet Documents."


def write_question_book(context: DocumentContext, sheet: PartySheet) -> bytes:
    """The workbook of a party; raises Refused where the library is not installed."""
    name = str(context.project.value(("project", "name")))
    book = SheetBook(f"{name}: questions, {sheet.title}", context)
    title = f"Questions: {_tell_party(sheet)}"
    _add_questions(book, context, sheet, title)
    if sheet.wanted:
        _add_documents(book, context, sheet, title)
    _add_project(book, context, sheet, title)
    return book.close()


def _tell_party(sheet: PartySheet) -> str:
    return f"{sheet.title}, {sheet.name}" if sheet.name else sheet.title


def _add_questions(book: SheetBook, context: DocumentContext, sheet: PartySheet, title: str) -> None:
    widths, looks = zip(*_QUESTIONS, strict=True)
    page = book.add_sheet(places.QUESTIONS, widths)
    by = f" by {long_date(sheet.return_by)}" if sheet.return_by else ""
    book.write_heading(page, title, f"{_ANSWERS} Return to {sheet.return_to}{by}.", widths)
    book.write_row(page, places.QUESTIONS_HEAD, places.QUESTION_COLUMNS, ["head"] * len(looks))
    answer = places.QUESTION_COLUMNS.index(places.ANSWER)
    for number, one in enumerate(sheet.questions, 1):
        row = places.QUESTIONS_FIRST + number - 1
        cells = _list_cells(number, one)
        book.write_row(page, row, cells, looks)
        book.set_height(page, row, cells, widths)
        if one.choices:
            book.offer(page, (row, row), answer, one.choices)
    last = places.QUESTIONS_FIRST + max(len(sheet.questions), 1) - 1
    if not sheet.questions:
        book.write_row(page, last, (None, _NONE), ("text", "text"))
    page.freeze_panes(places.QUESTIONS_HEAD, 2)
    page.set_selection(places.QUESTIONS_FIRST - 1, answer, places.QUESTIONS_FIRST - 1, answer)
    page.repeat_rows(places.QUESTIONS_HEAD - 1)
    page.print_area(0, 0, last - 1, len(widths) - 2)  # the path of the field is for the program that reads it
    page.ignore_errors({"number_stored_as_text": f"A1:J{last}"})
    _set_lines(page, context, title)


def _list_cells(number: int, one: Question) -> tuple[SheetCell, ...]:
    told = (one.question, one.why, one.form, one.example, one.holds_up, one.due)
    return (str(number), *told, None, None, one.field)


def _add_documents(book: SheetBook, context: DocumentContext, sheet: PartySheet, title: str) -> None:
    widths, looks = zip(*_DOCUMENTS, strict=True)
    page = book.add_sheet(places.DOCUMENTS, widths)
    book.write_heading(page, f"Documents and information to send: {_tell_party(sheet)}", _SEND, widths)
    book.write_row(page, places.DOCUMENTS_HEAD, places.DOCUMENT_COLUMNS, ["head"] * len(looks))
    for number, one in enumerate(sheet.wanted, 1):
        row, cells = places.DOCUMENTS_FIRST + number - 1, _list_wanted(number, one)
        book.write_row(page, row, cells, looks)
        book.set_height(page, row, cells, widths)
    page.freeze_panes(places.DOCUMENTS_HEAD, 0)
    page.repeat_rows(places.DOCUMENTS_HEAD - 1)
    page.ignore_errors({"number_stored_as_text": f"A1:F{places.DOCUMENTS_FIRST + len(sheet.wanted)}"})
    _set_lines(page, context, title)


def _list_wanted(number: int, one: Wanted) -> tuple[SheetCell, ...]:
    return (str(number), one.name, one.holds_up, one.due, None, None)


def _add_project(book: SheetBook, context: DocumentContext, sheet: PartySheet, title: str) -> None:
    """What the sheet belongs to, and the cells for who answers."""
    widths = [width for width, _ in _PROJECT]
    page = book.add_sheet(places.PROJECT, widths)
    book.write_heading(page, title, _WHO, widths)
    filled = (places.ANSWERED_BY, places.ANSWERED_ON)
    for row, (label, told) in enumerate(_list_project(context, sheet), places.PROJECT_FIRST):
        book.write_row(page, row, (label, told), ("head", "answer" if label in filled else "text"))
        book.set_height(page, row, (label, told), widths)
    page.ignore_errors({"number_stored_as_text": "B1:B20"})
    _set_lines(page, context, title)


def _list_project(context: DocumentContext, sheet: PartySheet) -> list[tuple[str, SheetCell]]:
    project = context.project
    file = next((one.name for one in project.inputs if one.use == "project"), "")
    told: dict[str, SheetCell] = {
        places.PROJECT_NAME: str(project.value(("project", "name"))),
        places.PROJECT_NUMBER: str(project.get(("project", "number")) or ""),
        places.PROJECT_FILE: file,
        places.PARTY: _tell_party(sheet),
        places.PARTY_ROLE: sheet.role,
        places.FORMAT: places.FORMAT_VERSION,
        places.RETURN_TO: sheet.return_to,
        places.RETURN_BY: sheet.return_by.isoformat() if isinstance(sheet.return_by, datetime.date) else "",
    }
    return [(label, told.get(label)) for label in places.PROJECT_LABELS]


def _set_lines(page: object, context: DocumentContext, title: str) -> None:
    project = context.project
    name, number = str(project.value(("project", "name"))), project.get(("project", "number"))
    set_print(page, (f"{name} | {number}" if number else name, title), "", context.first == "si")
