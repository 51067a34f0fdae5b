"""Columns of a table that hold figures in one unit: they stand to the right, digit below digit."""

import re

from specgen.documents.numbering import plain_text
from specgen.model.block import Formula, Table, Text, Value

_FIGURE = re.compile(r"[-−+]?[\d,]*\.?\d+(?:-\d+/\d+|/\d+)?(?P<unit>\D*)")


def find_figures(table: Table) -> frozenset[int]:
    """The places of such columns, counted from 0; the first one names its rows and is none."""
    if len(table.rows) < 2:
        return frozenset()
    return frozenset(place for place in range(1, len(table.widths)) if _holds_figures(table, place))


def _holds_figures(table: Table, place: int) -> bool:
    """Whether every cell of a column that is not empty is one figure, all in one unit."""
    units = set()
    for row in table.rows:
        cell = row[place]
        if not cell:
            continue
        if not isinstance(cell[0], (Text, Value)) or any(isinstance(part, Formula) for part in cell):
            return False
        figure = _FIGURE.fullmatch(plain_text(cell).strip())
        if figure is None:
            return False
        units.add(figure["unit"])
        if len(units) > 1:
            return False
    return bool(units)
