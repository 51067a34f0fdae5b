"""Reads a table as CSV: commas, semicolons or tabs; UTF-8, UTF-16 with its mark, or the Windows code page."""

import csv
from collections.abc import Iterator
from io import StringIO
from pathlib import Path
from typing import NamedTuple

from specgen.model.problem import Problem, Refused
from specgen.reading.given_file import FileUse, read_given_file
from specgen.reading.grid import Cell, Grid
from specgen.reading.workbook_reading import MOST_COLUMNS, MOST_ROWS

_USE = FileUse("the table", "name a CSV file", 20_000_000, "split it")
_SIGNS = ",;\t"
_MARKS = ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))
_WINDOWS = "cp1252"


class CsvTable(NamedTuple):
    """The cells of a CSV file, and what is to be told of how it was read."""

    grid: Grid
    notes: tuple[str, ...]


class CsvRows(NamedTuple):
    """The rows of a CSV file, read as they are asked for; raises Refused at one that is no CSV."""

    rows: Iterator[list[str]]
    sign: str  # between cells
    code: str  # that its text was read by
    text: str


def open_csv(content: bytes, shown: str) -> CsvRows:
    """The rows of the bytes of a file named `shown`; raises Refused where they are no text."""
    text, code = _decode(content, shown)
    first = text[: text.find("\n") + 1 or len(text)].strip()
    told = first.lower().startswith("sep=") and len(first) == len("sep=;")
    sign = first[-1] if told else max(_SIGNS, key=first.count)
    return CsvRows(_list_rows(text, sign, shown, told), sign, code, text)


def tell_code(code: str, shown: str) -> tuple[str, ...]:
    """What is told of a text that is not in UTF-8; nothing of another."""
    return (f"{shown}: not in UTF-8; read as {_WINDOWS}",) if code == _WINDOWS else ()


def _list_rows(text: str, sign: str, shown: str, told: bool) -> Iterator[list[str]]:
    """The rows of a text; a first line `sep=;`, as programs write it, is a row without cells."""
    number = 0
    try:
        for number, row in enumerate(csv.reader(StringIO(text, newline=""), delimiter=sign, strict=True), 1):
            yield [] if told and number == 1 else row
    except csv.Error as error:
        message = f"row {number + 1} is not CSV: {error}"
        raise Refused(Problem(message, "check its quotes, or save the table anew", file=shown)) from None


def read_csv(path: Path, shown: str) -> CsvTable:
    """The cells of a file named `shown`; raises Refused where it is no table."""
    table = open_csv(read_given_file(path, _USE, shown), shown)
    cells: dict[tuple[int, int], Cell] = {}
    for number, row in enumerate(table.rows, 1):
        cells |= {(number, at): Cell(word) for at, word in enumerate(row, 1) if word.strip()}
        if number > MOST_ROWS or len(row) > MOST_COLUMNS:
            message = f"the table has more than {MOST_ROWS:,} rows or {MOST_COLUMNS} columns"
            raise Refused(Problem(message, "split it", file=shown))
    if not cells:
        raise Refused(
            Problem("the table is empty", "`specgen ask --table openings` writes one to begin with", file=shown)
        )
    return CsvTable(Grid(shown, "", cells), tell_code(table.code, shown))


def _decode(content: bytes, shown: str) -> tuple[str, str]:
    """The text, and the code that it was read by."""
    for code in (*(code for mark, code in _MARKS if content.startswith(mark)), "utf-8", _WINDOWS):
        try:
            return content.decode(code), code
        except UnicodeDecodeError:
            continue
    raise Refused(Problem("the table is not text", "save it as CSV in UTF-8", file=shown))
