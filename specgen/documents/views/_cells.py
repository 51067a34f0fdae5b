"""What tables put into a cell from several parts."""

from collections.abc import Iterable
from typing import Any

from specgen.documents.display_values import DisplayValue
from specgen.model.source import Source


def cite_section(number: str, source: Source, subject: str) -> DisplayValue:
    """The number of a section of the adopted code, which itself is the citation; marked where nobody has read it."""
    return DisplayValue(number, number, None if source.is_verified else source, about=f"Section, {subject}")


def join_cells(parts: Iterable[list[Any]]) -> list[Any]:
    """The content of several cells in one, separated by semicolons."""
    cells: list[Any] = []
    for part in parts:
        cells += [*(["; "] if cells else []), *part]
    return cells
