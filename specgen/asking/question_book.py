"""The questions to the parties of one recipient as a workbook, to be filled in and sent back."""

from specgen.asking import answer_sheet as places
from specgen.asking.answer_sheet import name_page
from specgen.asking.member_table import make_table
from specgen.asking.papers_page import add_papers_page
from specgen.asking.project_page import add_project_page, set_lines, tell_party
from specgen.asking.questions import PartySheet, Question, Wanted
from specgen.asking.sheet_book import SheetBook
from specgen.asking.table_book import add_table_page
from specgen.asking.tables import find_table_named
from specgen.documents.context import DocumentContext
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
_ANSWERS = (
    "Fill in the column Answer, with the unit; leave blank what is not known. Write anything else under Remark, and "
    "who answers on the sheet Project."
)
_SEND = "Send each document as a file, and each other item in a reply. They answer no question of the sheet Questions."
_NONE = "No questions; see the sheet Documents."


def write_question_book(context: DocumentContext, *sheets: PartySheet) -> bytes:
    """The workbook of one party or several; raises Refused where the library is not installed."""
    name = str(context.project.value(("project", "name")))
    book = SheetBook(f"{name}: questions, {', '.join(sheet.title for sheet in sheets)}", context.project)
    for part, sheet in enumerate(sheets, 1):
        _add_party(book, context, sheet, part)
    return book.close()


def _add_party(book: SheetBook, context: DocumentContext, sheet: PartySheet, part: int) -> None:
    """The pages of a party: its questions, documents, lists to enter, and who answers."""
    title = f"Questions: {tell_party(sheet)}"
    _add_questions(book, context, sheet, title, part)
    if sheet.wanted:
        _add_documents(book, context, sheet, title, part)
    if sheet.papers:
        add_papers_page(book, context, sheet, part)
    for table in sheet.tables:
        add_table_page(book, context, make_table(context, find_table_named(table), sheet.role), part)
    add_project_page(book, context, title, sheet, part=part)


def _add_questions(book: SheetBook, context: DocumentContext, sheet: PartySheet, title: str, part: int) -> None:
    widths, looks = zip(*_QUESTIONS, strict=True)
    page = book.add_sheet(name_page(places.QUESTIONS, part), widths)
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
    set_lines(page, context, title)


def _list_cells(number: int, one: Question) -> tuple[SheetCell, ...]:
    told = (one.question, one.why, one.form, one.example, one.holds_up, one.due)
    return (str(number), *told, None, None, one.field)


def _add_documents(book: SheetBook, context: DocumentContext, sheet: PartySheet, title: str, part: int) -> None:
    widths, looks = zip(*_DOCUMENTS, strict=True)
    page = book.add_sheet(name_page(places.DOCUMENTS, part), widths)
    book.write_heading(page, f"Documents and information to send: {tell_party(sheet)}", _SEND, widths)
    book.write_row(page, places.DOCUMENTS_HEAD, places.DOCUMENT_COLUMNS, ["head"] * len(looks))
    for number, one in enumerate(sheet.wanted, 1):
        row, cells = places.DOCUMENTS_FIRST + number - 1, _list_wanted(number, one)
        book.write_row(page, row, cells, looks)
        book.set_height(page, row, cells, widths)
    page.freeze_panes(places.DOCUMENTS_HEAD, 0)
    page.repeat_rows(places.DOCUMENTS_HEAD - 1)
    page.ignore_errors({"number_stored_as_text": f"A1:F{places.DOCUMENTS_FIRST + len(sheet.wanted)}"})
    set_lines(page, context, title)


def _list_wanted(number: int, one: Wanted) -> tuple[SheetCell, ...]:
    return (str(number), one.name, one.holds_up, one.due, None, None)
