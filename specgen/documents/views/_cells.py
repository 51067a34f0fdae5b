"""What tables put into a cell from several parts."""

from collections.abc import Iterable
from typing import Any


def join_cells(parts: Iterable[list[Any]]) -> list[Any]:
    """The content of several cells in one, separated by semicolons."""
    cells: list[Any] = []
    for part in parts:
        cells += [*(["; "] if cells else []), *part]
    return cells
