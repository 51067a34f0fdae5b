"""The cells of a sheet as they were typed or calculated, each with its name as a spreadsheet shows it: `H12`."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import NamedTuple

CellValue = str | int | float | bool | datetime.datetime | datetime.date | datetime.time | datetime.timedelta | None


class Cell(NamedTuple):
    """What a cell holds: its value, how a number is shown, and whether a formula or an error stands in it."""

    value: CellValue = None
    look: str = ""  # the code of a number format
    formula: bool = False
    error: bool = False

    @property
    def words(self) -> str:
        """The cell as one line of text, for a title, a label or a remark; a date as year-month-day."""
        value = self.value
        if isinstance(value, datetime.datetime):
            value = value.date()
        if isinstance(value, float) and value.is_integer():
            value = int(value)
        return "" if value is None else " ".join(str(value).split())


EMPTY = Cell()


@dataclass(frozen=True)
class Grid:
    """The cells of one sheet that are not empty, by row and column counted from 1."""

    file: str  # as it was named
    name: str  # of the sheet; empty for a CSV file
    cells: dict[tuple[int, int], Cell] = field(default_factory=dict)

    def cell(self, row: int, column: int) -> Cell:
        """The cell at a place; an empty one where there is none."""
        return self.cells.get((row, column), EMPTY)

    def words(self, row: int, column: int) -> str:
        """The cell at a place as one line of text."""
        return self.cell(row, column).words

    def place(self, row: int, column: int = 0) -> str:
        """The name of a place in messages: `eifs.xlsx, Questions!H12`; of a row without a column."""
        where = f"{name_column(column)}{row}" if column else f"row {row}"
        return f"{self.file}, {self.name}{'!' if column else ' '}{where}" if self.name else f"{self.file}, {where}"

    def row_titles(self, row: int) -> dict[str, int]:
        """The columns of a row by their titles in small letters; of two that are alike the first."""
        titles: dict[str, int] = {}
        for at, column in sorted(place for place in self.cells if place[0] == row):
            titles.setdefault(self.words(at, column).casefold(), column)
        return titles

    def list_rows(self) -> Iterator[tuple[int, list[Cell | None]]]:
        """The rows that hold anything, each with its number and its cells from the first column on."""
        rows: dict[int, list[Cell | None]] = {}
        for (number, column), cell in self.cells.items():
            row = rows.setdefault(number, [])
            row += [None] * (column - len(row))
            row[column - 1] = cell
        yield from sorted(rows.items())

    @property
    def last_row(self) -> int:
        """The last row with a cell that is not empty; 0 where there is none."""
        return max((row for row, _ in self.cells), default=0)


def name_column(number: int) -> str:
    """The letters of a column: 1 is A, 27 is AA."""
    letters = ""
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
