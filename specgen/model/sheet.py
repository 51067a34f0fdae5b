"""Tables as plain typed data for spreadsheets: a sheet has columns of one kind each, and rows of values."""

import datetime
from typing import Literal, NamedTuple

SheetCell = str | int | float | datetime.date | None


class SheetColumn(NamedTuple):
    """A column: its title with the unit of its figures, its width in characters, the decimals it shows if not all."""

    title: str
    width: int
    kind: Literal["text", "date", "number"] = "text"
    decimals: int | None = None


class Sheet(NamedTuple):
    """A table by itself; `empty` is what stands below its head where it has no rows."""

    name: str  # of its tab, at most 31 characters
    columns: tuple[SheetColumn, ...]
    rows: tuple[tuple[SheetCell, ...], ...]
    empty: str


class Book(NamedTuple):
    """The sheets of a package, what its file says of itself, and the lines that every printed page repeats."""

    title: str
    author: str
    head: tuple[str, str]  # left and right
    foot: str
    metric: bool  # whether it prints on A4 in place of letter
    day: datetime.date | None  # of the package
    sheets: tuple[Sheet, ...]
