"""Reads the sheet `Documents sent` of a workbook that came back: the rows that were filled in."""

import re
from collections.abc import Iterator
from typing import NamedTuple

from specgen.asking import answer_sheet as at
from specgen.asking.papers_asked import read_typed
from specgen.model.problem import Problem
from specgen.reading.answer_text import NO_ANSWER
from specgen.reading.grid import Cell, Grid

KIND = "kind"
# What stands in a row before anybody fills it in.
_STANDING = (KIND, "covers", "standard")
_ENTRY = re.compile(r"(\S+) (\{.*\})(?: (\S.*))?")


class SentPaper(NamedTuple):
    """A row that was filled in: its mark, what it has by itself, the field that names it, and its cells by field."""

    mark: str
    typed: tuple[tuple[str, str], ...]
    field: str
    cells: dict[str, tuple[Cell, str]]  # with the place in messages
    remark: str
    place: str  # of the entry

    def words(self, name: str) -> str:
        """A cell as one line of text."""
        return self.cells[name][0].words if name in self.cells else ""


def read_papers(sheet: Grid) -> Iterator[SentPaper | Problem]:
    """The rows that tell of a document that was sent; a row whose entry was changed as a problem."""
    head = next((row for row in range(1, sheet.last_row + 1) if at.ENTRY.casefold() in sheet.row_titles(row)), 0)
    titles = sheet.row_titles(head) if head else {}
    columns = {name: titles[label.casefold()] for label, name in at.PAPER_FIELDS.items() if label.casefold() in titles}
    for row in range(head + 1, sheet.last_row + 1) if head else ():
        cells = {name: (sheet.cell(row, column), sheet.place(row, column)) for name, column in columns.items()}
        told = {name for name, (cell, _) in cells.items() if cell.words.casefold() not in NO_ANSWER}
        place = sheet.place(row, titles[at.ENTRY.casefold()])
        entry = _ENTRY.fullmatch(sheet.words(row, titles[at.ENTRY.casefold()]))
        if not told - set(_STANDING):
            continue
        if entry is None:
            yield Problem("the row does not say which document it is", f"leave {place} as it was sent", file=place)
            continue
        remark = sheet.words(row, titles.get(at.REMARK.casefold(), 0))
        yield SentPaper(entry[1], read_typed(entry[2]), entry[3] or "", cells, remark, place)
