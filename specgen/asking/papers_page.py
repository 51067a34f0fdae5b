"""The sheet `Documents sent` of a workbook: a row for each document that a party sends, to be filled in."""

from specgen.asking import answer_sheet as places
from specgen.asking.papers_asked import PaperAsked, write_entry
from specgen.asking.project_page import set_lines, tell_party
from specgen.asking.questions import PartySheet
from specgen.asking.sheet_book import SheetBook
from specgen.documents.context import DocumentContext
from specgen.model.condition import parse_condition, terms
from specgen.model.field import Field
from specgen.model.sheet import SheetCell
from specgen.model.value_text import words
from specgen.reading.list_text import split_list
from specgen.reading.side_files import ATTACHMENTS

_WIDTHS = {places.NUMBER: 5, places.PAPER: 44, "Title": 34, "File name": 26, places.REMARK: 20, places.ENTRY: 28}
_WIDTH = 13
_GUIDE = (
    "Fill in a row for each document that you send: title, date, name of the file. Where one file answers several "
    "rows, enter its name in each of them. Leave the row blank until the document is there."
)


def add_papers_page(book: SheetBook, context: DocumentContext, sheet: PartySheet, part: int = 1) -> None:
    """The sheet of the documents of a party."""
    widths = [_WIDTHS.get(column, _WIDTH) for column in places.PAPER_COLUMNS]
    page = book.add_sheet(places.name_page(places.SENT, part), widths)
    title = f"Documents sent: {tell_party(sheet)}"
    book.write_heading(page, title, _GUIDE, widths)
    book.write_row(page, places.PAPERS_HEAD, places.PAPER_COLUMNS, ["head"] * len(widths))
    book.set_height(page, places.PAPERS_HEAD, places.PAPER_COLUMNS, widths)
    for number, paper in enumerate(sheet.papers, 1):
        _add_paper(book, page, context, number, paper, widths)
    last = places.PAPERS_FIRST + len(sheet.papers) - 1
    page.freeze_panes(places.PAPERS_HEAD, 2)
    page.repeat_rows(places.PAPERS_HEAD - 1)
    page.print_area(0, 0, last - 1, len(widths) - 2)  # the entry is for the program that reads it
    page.ignore_errors({"number_stored_as_text": f"A1:L{last}"})
    set_lines(page, context, title)


def _add_paper(
    book: SheetBook, page: object, context: DocumentContext, number: int, paper: PaperAsked, widths: list[int]
) -> None:
    """The row of a document; what is not asked of its kind holds a dash."""
    row, typed = places.PAPERS_FIRST + number - 1, dict(paper.typed)
    kind = typed.get("kind", "")
    cells: list[SheetCell] = [str(number), paper.name]
    looks = ["text", "text"]
    for place, name in enumerate(places.PAPER_FIELDS.values(), len(cells)):
        field = context.project.schema.fields[ATTACHMENTS, "*", name]
        asked = not kind or is_asked(field, kind)
        told = ", ".join(words(one) if field.values else one for one in split_list(typed.get(name, "")))
        cells.append(told or (None if asked else places.NOT_ASKED))
        looks.append("answer" if asked else "text")
        choices = ("yes", "no") if field.kind == "yes_no" else tuple(map(words, field.values))
        if choices and asked:
            several = field.kind == "list"
            told = f"{field.label}: one or more of {', '.join(choices)}" if several else ""
            book.offer(page, (row, row), place, () if several else choices, told)
    cells += [None, write_entry(paper)]
    book.write_row(page, row, cells, [*looks, "answer", "small"])
    book.set_height(page, row, cells, widths)


def is_asked(field: Field, kind: str) -> bool:
    """Whether a field is asked of an attachment of a kind."""
    of_kind = (
        (one for one in terms(parse_condition(field.condition)) if one.path[-1] == "kind") if field.condition else ()
    )
    return all(kind in one.right for one in of_kind)
