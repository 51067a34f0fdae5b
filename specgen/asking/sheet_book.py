"""What the workbooks of this room share: cells to fill in, drop-downs, and sheets protected without a password."""

import datetime
import io
from collections.abc import Iterable, Sequence
from typing import Any

from specgen.asking.answer_sheet import CHOICES
from specgen.formats.workbook import GRID, HEAD, find_height, open_workbook, write_cell
from specgen.model.project import Project
from specgen.model.sheet import SheetCell

# A cell of text keeps `3/4` as it was typed, where any other would make a date of it.
_TEXT = {"num_format": "@", "text_wrap": True}
_FILL = {"bg_color": "#FFF9DB", "locked": False, "border_color": "#7F7F7F"}
_SMALL = {"font_size": 8, "font_color": "#595959"}
_LOOKS: dict[str, dict[str, Any]] = {
    "text": GRID | _TEXT,
    "answer": GRID | _TEXT | _FILL,
    "date": GRID | {"num_format": "yyyy-mm-dd", "align": "left"},
    "head": GRID | HEAD,
    "small": GRID | _TEXT | _SMALL,
    "title": {"bold": True, "font_size": 14},
    "plain": {"text_wrap": True, "valign": "top"},
}
# What may be done on a protected sheet besides filling in.
_ALLOWED = {"format_columns": True, "format_rows": True}
# The most signs of what is told beside a cell (from memory).
_MOST_TOLD = 255
_WARNING = "This is none of the choices listed. Enter it only if none of them fits, and say why beside it."


class SheetBook:
    """A workbook that is filled in by others; `looks` are its formats by name."""

    def __init__(self, title: str, project: Project | None) -> None:
        day = project.get(("package", "date")) if project is not None else None
        author = str(project.get(("parties", "applicator", "name")) or "") if project is not None else ""
        self.stream = io.BytesIO()
        self.workbook = open_workbook(self.stream, title, author, day if isinstance(day, datetime.date) else None)
        self.looks = {name: self.workbook.add_format(look) for name, look in _LOOKS.items()}
        self.choices: dict[tuple[str, ...], int] = {}

    def add_sheet(self, name: str, widths: Sequence[int]) -> Any:
        """A protected sheet with columns of these widths in characters."""
        page = self.workbook.add_worksheet(name)
        page.protect("", _ALLOWED)
        for place, width in enumerate(widths):
            page.set_column(place, place, width)
        return page

    def write_row(self, page: Any, row: int, cells: Sequence[SheetCell], looks: Sequence[str]) -> None:
        """Write cells in formats of these names from the first column on; the row counts from 1."""
        for place, (cell, look) in enumerate(zip(cells, looks, strict=True)):
            write_cell(page, row - 1, place, cell, self.looks[look])

    def set_height(self, page: Any, row: int, cells: Iterable[SheetCell], widths: Iterable[int]) -> None:
        """Make a row as high as its words need; the row counts from 1."""
        page.set_row(row - 1, find_height(cells, widths))

    def write_heading(self, page: Any, title: str, guide: str, widths: Sequence[int]) -> None:
        """The title in row 1, the line of guidance in row 2 over all columns."""
        write_cell(page, 0, 0, title, self.looks["title"])
        page.merge_range(1, 0, 1, len(widths) - 1, "", self.looks["plain"])
        write_cell(page, 1, 0, guide, self.looks["plain"])
        self.set_height(page, 2, [guide], [sum(widths)])

    def offer(self, page: Any, rows: tuple[int, int], place: int, choices: tuple[str, ...], told: str = "") -> None:
        """A drop-down in the cells of a column, and what is told beside the cell that is chosen; rows count from 1.

        Another entry is taken after a warning.
        """
        rule: dict[str, Any] = {"validate": "any"}
        if choices:
            column = self.choices.setdefault(choices, len(self.choices))
            rule = {"validate": "list", "source": f"={CHOICES}!{_cell(column, 1)}:{_cell(column, len(choices))}"}
            rule |= {"error_type": "warning", "error_title": "Not among the choices", "error_message": _WARNING}
        if told:
            rule["input_message"] = told if len(told) <= _MOST_TOLD else f"{told[: _MOST_TOLD - 1]}…"
        page.data_validation(rows[0] - 1, place, rows[1] - 1, place, rule)

    def close(self) -> bytes:
        """The file, with the choices on a sheet of their own that is hidden."""
        if self.choices:
            page = self.add_sheet(CHOICES, ())
            for choices, column in self.choices.items():
                for row, choice in enumerate(choices):
                    write_cell(page, row, column, choice, self.looks["text"])
            page.hide()
        self.workbook.close()
        return self.stream.getvalue()


def _cell(column: int, row: int) -> str:
    """The absolute address of a cell: `$A$1`, `$AB$12`; the column counts from 0, the row from 1."""
    letters = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return f"${letters}${row}"
