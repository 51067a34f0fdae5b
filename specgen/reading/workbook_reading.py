"""Reads the cells of a workbook: values as they were typed or last calculated; nothing is run and no link followed."""

import warnings
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any

from specgen.model.problem import Problem, Refused, refuse
from specgen.reading.given_file import read_given_file
from specgen.reading.grid import Cell, Grid
from specgen.reading.workbook_file import USE, WorkbookBytes, check_workbook, refuse_damaged

# More than any project has; a table of the largest has 20,000 members.
MOST_ROWS, MOST_COLUMNS, MOST_SHEETS = 21_000, 100, 40
_LAST_ROW = 1_048_576  # of a sheet (from memory)


def read_workbook(path: Path, shown: str) -> dict[str, Grid]:
    """The cells of each sheet of a file by the name of the sheet; raises Refused."""
    return read_sheets(read_given_file(path, USE, shown), shown)


def read_sheets(content: bytes, shown: str) -> dict[str, Grid]:
    """The cells of each sheet of the bytes of a file by the name of the sheet; raises Refused."""
    book = check_workbook(content, shown)
    values = _read_cells(book, shown, values=True)
    formulas = _read_cells(book, shown, values=False) if book.has_formulas else {}
    return {name: Grid(shown, name, _join(cells, formulas.get(name, {}))) for name, cells in values.items()}


def _join(values: dict[tuple[int, int], Cell], formulas: dict[tuple[int, int], Cell]) -> dict[tuple[int, int], Cell]:
    """The cells with their values, and those marked in which a formula stands, with a value or without one."""
    marked = {at: values.get(at, Cell())._replace(formula=True) for at, cell in formulas.items() if cell.formula}
    return values | marked


def _read_cells(book: WorkbookBytes, shown: str, values: bool) -> dict[str, dict[tuple[int, int], Cell]]:
    """The cells of each sheet: with the values of formulas, or with the formulas themselves."""
    try:
        import openpyxl
    except ImportError:
        hint = "install specgen with its extra sheets, or save the table as CSV"
        raise refuse("a workbook is read by a library that is not installed", hint) from None
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # of looks that the library cannot keep, which nobody asks for
            opened = openpyxl.load_workbook(BytesIO(book.content), read_only=True, data_only=values, keep_links=False)
            sheets = opened.worksheets
            if not sheets:
                raise refuse_damaged(shown)
            if len(sheets) > MOST_SHEETS:
                raise Refused(
                    Problem(f"the workbook has more than {MOST_SHEETS} sheets", "take out the others", file=shown)
                )
            return {sheet.title: dict(_list_cells(sheet, shown)) for sheet in sheets}
    except Refused:
        raise
    except Exception:  # the library raises whatever its parsers come to in a damaged part
        raise refuse_damaged(shown) from None


def _list_cells(sheet: Any, shown: str) -> Iterator[tuple[tuple[int, int], Cell]]:
    """The cells of a sheet that are not empty, by row and column."""
    blank = None
    for number, row in enumerate(sheet.iter_rows(max_row=_LAST_ROW, max_col=MOST_COLUMNS), 1):
        if row is blank:  # the library gives one and the same row for all that are left out
            continue
        blank = row if all(cell.value is None for cell in row) else blank
        for column, cell in enumerate(row, 1):
            if cell.value is None:
                continue
            if number > MOST_ROWS:
                message = f"the sheet {sheet.title!r} has more than {MOST_ROWS:,} rows"
                raise Refused(Problem(message, "take out what is no answer", file=shown))
            is_text = isinstance(cell.value, str)
            look = "" if is_text else str(cell.number_format or "")
            yield (number, column), Cell(cell.value, look, cell.data_type == "f", cell.data_type == "e")
