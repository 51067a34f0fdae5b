"""A table of members as a workbook to fill in, and as comma-separated values."""

from specgen.asking import answer_sheet as places
from specgen.asking.member_table import MemberTable
from specgen.asking.project_page import add_project_page
from specgen.asking.sheet_book import SheetBook
from specgen.documents.context import DocumentContext
from specgen.formats.csv_sheet import write_csv
from specgen.formats.workbook import set_print
from specgen.model.sheet import Sheet, SheetColumn

# So many lines stand empty below the members.
_BLANK = 40
# So many characters of a row stand on a page.
_PAGE = 170


def write_table_book(context: DocumentContext, made: MemberTable) -> bytes:
    """The workbook of a table; raises Refused where the library is not installed."""
    book = SheetBook(f"{context.project.value(('project', 'name'))}: {made.table.name}", context.project)
    add_table_page(book, context, made)
    label = context.project.schema.collections[made.table.collection].label
    add_project_page(book, context, f"Table: {label}", None, made.table.name)
    return book.close()


def add_table_page(book: SheetBook, context: DocumentContext, made: MemberTable, part: int = 1) -> None:
    """The sheet of a table, in a workbook that asks several parties that of one of them."""
    project = str(context.project.value(("project", "name")))
    widths = [column.width for column in made.columns]
    page = book.add_sheet(places.name_page(made.table.name, part), widths)
    titles, names = ([getattr(column, part) for column in made.columns] for part in ("title", "name"))
    book.write_row(page, places.TABLE_HEAD, titles, ["head"] * len(titles))
    book.set_height(page, places.TABLE_HEAD, titles, widths)
    book.write_row(page, places.TABLE_NAMES, names, ["small"] * len(names))
    book.set_height(page, places.TABLE_NAMES, names, widths)
    last = places.TABLE_FIRST + len(made.rows) + _BLANK - 1
    for row, cells in enumerate((*made.rows, *([("",) * len(titles)] * _BLANK)), places.TABLE_FIRST):
        book.write_row(page, row, cells, ["answer"] * len(titles))
    for place, column in enumerate(made.columns):
        book.offer(page, (places.TABLE_FIRST, last), place, column.choices, column.told)
    page.freeze_panes(places.TABLE_NAMES, 1)
    page.repeat_rows(places.TABLE_HEAD - 1)
    page.repeat_columns(0)
    page.ignore_errors({"number_stored_as_text": f"A1:ZZ{last}"})
    label = context.project.schema.collections[made.table.collection].label
    set_print(page, (project, label), "", context.first == "si", -(-sum(widths) // _PAGE))


def write_table_csv(made: MemberTable) -> bytes:
    """The same rows as comma-separated values: labels, names, members."""
    columns = tuple(SheetColumn(column.title, column.width) for column in made.columns)
    return write_csv(Sheet(made.table.name, columns, (tuple(c.name for c in made.columns), *made.rows), ""))
