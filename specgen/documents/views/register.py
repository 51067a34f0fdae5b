"""The submittal register: the items that the contract asks for, and what answers each."""

import datetime
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.deviations import find_approval
from specgen.documents.register import ITEMS, Cell, Column, find_documents, make_register
from specgen.model.block import Blank
from specgen.model.value_text import long_date


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each item by section and paragraph; the columns of the review are left to be filled in."""
    register = make_register(context)
    shown = [number for number, column in enumerate(register.columns) if column.width]
    columns = [register.columns[number] for number in shown]
    lines = tuple(
        tuple(_set_cell(context, row.mark, register.columns[number], row.cells[number]) for number in shown)
        for row in register.rows
    )
    return TableView(tuple(c.title for c in columns), lines, tuple(c.width for c in columns))


def _set_cell(context: DocumentContext, mark: str, column: Column, cell: Cell) -> Any:
    """A value as it prints; what is still to be given in brackets, what is filled in later as a blank."""
    path = (*ITEMS, mark, column.holds)
    if not column.holds:
        approved = _tell_approved(context, mark, column)
        if approved:
            return approved
    if not column.holds or (column.holds == "submitted" and cell is None):
        # No date to sign at, as nobody signs row by row: the register may go on over pages.
        return Blank(f"{column.title}, item {mark}")
    if isinstance(cell, datetime.date) and column.holds == "submitted":
        return long_date(cell)
    if column.holds not in context.project.schema.node(path[:-1]).children:
        return cell or "–"
    shown = context.display(path)
    if shown.open:
        return shown if context.project.applies(path) else "–"
    # A date, and what the register says in other words than the field, such as marks that follow each other.
    return shown if isinstance(cell, datetime.date) else cell or "–"


def _tell_approved(context: DocumentContext, mark: str, column: Column) -> str:
    """The action on an item that lists a deviation, and its day, where the deviation is approved already."""
    papers = {paper.mark for paper in context.project.get((*ITEMS, mark, "attachments")) or ()}
    deviation = find_approval(context.project, papers) if "D03" in find_documents(context, mark) else ""
    if not deviation:
        return ""
    if column.kind == "date":
        return long_date(context.project.get(("deviations", deviation, "approved_on")))
    return f"{deviation} approved" if column.title == "Action" else ""
