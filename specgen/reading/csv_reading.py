"""Reads a table as CSV: commas, semicolons or tabs; UTF-8, UTF-16 with its mark, or the Windows code page."""

import csv
from pathlib import Path
from typing import NamedTuple

from specgen.reading.grid import Cell, Grid
from specgen.reading.workbook_reading import MOST_COLUMNS, MOST_ROWS
from specgen.model.problem import Problem, Refused
from specgen.reading.given_file import FileUse, read_given_file

_USE = FileUse("the table", "name a CSV file", 20_000_000, "split it")
_SIGNS = ",;\t"
_MARKS = ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))
_WINDOWS = "cp1252"


class CsvTable(NamedTuple):
    """The cells of a CSV file, and what is to be told of how it was read."""

    grid: Grid
    notes: tuple[str, ...]


def read_csv(path: Path, shown: str) -> CsvTable:
    """The cells of a file named `shown`; raises Refused where it is no table."""
    content = read_given_file(path, _USE, shown)
    text, code = _decode(content, shown)
    notes = (f"{shown}: not in UTF-8; read as {_WINDOWS}",) if code == _WINDOWS else ()
    lines = text.splitlines(keepends=True)
    sign, lines = _find_sign(lines)
    cells: dict[tuple[int, int], Cell] = {}
    number = 0
    try:
        for number, row in enumerate(csv.reader(lines, delimiter=sign, strict=True), 1):
            cells |= {(number, at): Cell(word) for at, word in enumerate(row, 1) if word.strip()}
            if number > MOST_ROWS or len(row) > MOST_COLUMNS:
                message = f"the table has more than {MOST_ROWS:,} rows or {MOST_COLUMNS} columns"
                raise Refused(Problem(message, "split it", file=shown))
    except csv.Error as error:
        message = f"row {number + 1} is not CSV: {error}"
        raise Refused(Problem(message, "check its quotes, or save the table anew", file=shown)) from None
    if not cells:
        raise Refused(
            Problem("the table is empty", "`specgen ask --table openings` writes one to begin with", file=shown)
        )
    return CsvTable(Grid(shown, "", cells), notes)


def _decode(content: bytes, shown: str) -> tuple[str, str]:
    """The text, and the code that it was read by."""
    for code in (*(code for mark, code in _MARKS if content.startswith(mark)), "utf-8", _WINDOWS):
        try:
            return content.decode(code), code
        except UnicodeDecodeError:
            continue
    raise Refused(Problem("the table is not text", "save it as CSV in UTF-8", file=shown))


def _find_sign(lines: list[str]) -> tuple[str, list[str]]:
    """The sign between cells, and the lines of the table; a first line `sep=;` tells the sign, as programs write it."""
    first = lines[0].strip() if lines else ""
    if first.lower().startswith("sep=") and len(first) == len("sep=;"):
        return first[-1], ["\n", *lines[1:]]
    return max(_SIGNS, key=first.count), lines
