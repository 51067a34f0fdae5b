"""Empty records as files to fill in: CSV, YAML with a comment on each line, and a workbook with choices to pick."""

from collections.abc import Callable, Iterator, Sequence

from specgen.asking.blank_record import BlankColumn, BlankTable
from specgen.asking.sheet_book import SheetBook
from specgen.formats.csv_sheet import write_csv
from specgen.formats.workbook import set_print
from specgen.model.problem import refuse
from specgen.model.project import Project
from specgen.model.sheet import Sheet, SheetColumn
from specgen.terminal.field_lines import format_comment

_LINES = 200  # that stand empty in a workbook
_NARROW, _WIDE = 11, 24  # characters of a column
_PAGE = 300  # characters of a row that stand on a page
_SOME = 60  # choices that a comment lists


def write_blank_csv(tables: Sequence[BlankTable], _kind: str, _project: Project | None) -> bytes:
    """The titles of the entries, below which lines are filled in."""
    columns = tuple(SheetColumn(column.title, _NARROW) for column in tables[0].columns)
    return write_csv(Sheet(tables[0].collection, columns, (), ""))


def write_blank_yaml(tables: Sequence[BlankTable], kind: str, project: Project | None) -> bytes:
    """An entry of each collection without values, with what belongs into each line."""
    head = [f"Record of the site, {kind}." + (f" {project.get(('project', 'name'))}" if project is not None else "")]
    head.append("Copy the lines of an entry for the next one; leave empty what was not read.")
    lines = [*format_comment(head, 0), "format: 1", *(line for table in tables for line in _list_lines(table))]
    return ("\n".join(lines) + "\n").encode()


def _list_lines(table: BlankTable) -> Iterator[str]:
    yield from ("", f"{table.collection}:")
    for number, column in enumerate(table.columns):
        yield from format_comment(_list_words(column), 4 if table.has_entries else 2)
        sign = "  - " if table.has_entries and not number else "    " if table.has_entries else "  "
        yield f"{sign}{column.name}:"


def _list_words(column: BlankColumn) -> Iterator[str]:
    yield column.asks
    if column.choices:
        more = ", ..." if len(column.choices) > _SOME else ""
        lead = "a list of: " if column.listed else ""
        yield f"{lead}{', '.join(column.choices[:_SOME])}{more}"
    else:
        yield f"such as {column.example}"


def write_blank_book(tables: Sequence[BlankTable], kind: str, project: Project | None) -> bytes:
    """A workbook with a sheet for each collection; a choice is picked from a list, or typed."""
    name = f"{project.get(('project', 'name'))}: " if project is not None else ""
    book = SheetBook(f"{name}record, {kind}", project)
    for table in tables:
        widths = [_find_width(column) for column in table.columns]
        page = book.add_sheet(table.collection, widths)
        titles = [column.title for column in table.columns]
        book.write_row(page, 1, titles, ["head"] * len(titles))
        book.set_height(page, 1, titles, widths)
        last = 1 + (_LINES if table.has_entries else 1)
        for row in range(2, last + 1):
            book.write_row(page, row, [""] * len(titles), ["answer"] * len(titles))
        for place, column in enumerate(table.columns):
            told = column.asks if column.choices else f"{column.asks}; such as {column.example}"
            book.offer(page, (2, last), place, () if column.listed else column.choices, told)
        page.freeze_panes(1, 0)
        page.repeat_rows(0)
        page.ignore_errors({"number_stored_as_text": f"A1:ZZ{last}"})
        metric = project is not None and project.system == "si"
        set_print(page, (name.removesuffix(": "), f"record, {kind}"), "", metric, -(-sum(widths) // _PAGE))
    return book.close()


def _find_width(column: BlankColumn) -> int:
    """The characters of a column: those of its title, or of its longest choice."""
    longest = max(map(len, (column.title, *column.choices)))
    return _WIDE if column.listed else min(_WIDE, max(_NARROW, longest + 2))


# By the ending of the file that is written.
BLANK_WRITERS: dict[str, Callable[[Sequence[BlankTable], str, Project | None], bytes]] = {
    ".csv": write_blank_csv,
    ".yaml": write_blank_yaml,
    ".yml": write_blank_yaml,
    ".xlsx": write_blank_book,
}


def find_blank_writer(name: str) -> Callable[[Sequence[BlankTable], str, Project | None], bytes]:
    """What writes an empty record into a file of this name; raises Refused for another ending."""
    ending = f".{name.rpartition('.')[2].lower()}" if "." in name else ""
    if ending not in BLANK_WRITERS:
        raise refuse(f"an empty record is not written as {name!r}", "let the name end in .csv, .yaml, or .xlsx")
    return BLANK_WRITERS[ending]
