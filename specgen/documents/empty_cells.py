"""Cells without a value: a dash; the name of a group again where a long one may be torn."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import chain

from specgen.documents.columns import count_row_lines
from specgen.documents.plain_text import plain_text
from specgen.model.block import Blank, CheckBox, Inlines, Table, Text

NONE = "–"
# So many lines of a group at most stand below one name; its rows stay on the page of the name above them.
_GROUP = 18
Row = tuple[Inlines, ...]


def fill_cells(table: Table) -> Table:
    """The table with a dash in each cell that says nothing; a form is filled in by hand, and keeps its own."""
    if all(map(all, table.rows)):  # nearly every table
        return table
    if any(isinstance(part, (Blank, CheckBox)) for part in chain(*chain(*table.rows))):
        return table
    named = tuple(_name_groups(table))
    last = len(named) - 1
    return replace(table, rows=tuple(_fill(table, row, n == last) for n, row in enumerate(named)))


def _name_groups(table: Table) -> Iterator[Row]:
    """The rows; one whose first cell is empty belongs to the name above it, which a long group says again."""
    name: Inlines = ()
    lines = 0
    for row in table.rows:
        height = count_row_lines(row, table.widths)
        if row[0]:
            name, lines = row[0], 0
        elif name and lines + height > _GROUP:
            row = ((Text(f"{plain_text(name)} (continued)"),), *row[1:])
            lines = 0
        lines += height
        yield row


def _fill(table: Table, row: Row, last: bool) -> Row:
    """A row with its dashes; neither a sum below its columns nor the end of pairs set beside each other has any."""
    half = len(row) // 2
    if last and (not any(row[1:-1]) or table.header[:half] == table.header[half:]):
        return row
    return (row[0], *(cell or (Text(NONE),) for cell in row[1:]))
