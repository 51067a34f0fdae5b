"""The columns of a table: which hold figures in one unit, and shares of the width that make few lines."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import chain
from math import ceil

from specgen.documents.no_break import keep_words
from specgen.documents.plain_text import plain_text
from specgen.model.block import Blank, CheckBox, Formula, Inlines, Table, Text, Value

_FIGURE = re.compile(r"[-−+]?[\d,]*\.?\d+(?:-\d+/\d+|/\d+)?(?P<unit>[^\d,]*)")
# Signs on a line over the width of a letter page in the type of tables; those that the margins of a cell take.
# That of a page that lies on its side stands beside it.
PAGE, SIDEWAYS, MARGIN = 126, 166, 2
# A heading is set wider than the words below it, and a single word than words with their spaces.
_WIDER, _WORD = 1.2, 1.08
# What a capital is wider than a small letter, and up to how many signs a column keeps each cell on one line.
_CAPITAL, _ONE_LINE = 0.7, 28
# What the m of `mm` is wider than a figure: the two would part at the end of a narrow column.
_BROAD = 0.6
# What a share loses as it is a whole percent.
_LEEWAY = 1.3

# So many rows tell how wide the columns of a long table are.
_MEASURED = 60

Measure = tuple[int, int]  # longest word, and all the words, in signs


def arrange_columns(table: Table, page: int = PAGE) -> Table:
    """The table with the widths and the sides of its columns as its content asks for, on a page of so many signs."""
    return replace(table, widths=fit_widths(table, page), figures=find_figures(table))


def find_figures(table: Table) -> frozenset[int]:
    """The places of such columns, counted from 0; the first one names its rows and is none."""
    if len(table.rows) < 2:
        return frozenset()
    return frozenset(place for place in range(1, len(table.widths)) if _holds_figures(table, place))


def _holds_figures(table: Table, place: int) -> bool:
    """Whether every cell of a column that is not empty is one figure, all in one unit."""
    units = set()
    for row in _list_full(table):
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


def fit_widths(table: Table, page: int = PAGE) -> tuple[int, ...]:
    """Shares of the width that add up to 100: those of the table, or others that make fewer lines.

    A form keeps its own, as nobody knows what is written into it.
    """
    if len(table.widths) < 2 or any(isinstance(part, (Blank, CheckBox)) for part in chain(*chain(*table.rows))):
        return table.widths
    head = [(round(word * _WIDER), round(words * _WIDER)) for word, words in map(_measure, table.header)]
    rows = [head, *(list(map(_measure, row)) for row in _list_full(table)[:_MEASURED])]
    least = [max(row[place][0] for row in rows) + MARGIN for place in range(len(head))]
    longest = [max(row[place][1] for row in rows) + MARGIN for place in range(len(head))]
    usual = [sum(row[place][1] for row in rows) // len(rows) + MARGIN for place in range(len(head))]
    whole = [most if most <= _ONE_LINE else word for word, most in zip(least, longest, strict=True)]
    shared = (_share(least, longest, page), _share(least, usual, page), _share(whole, usual, page))
    candidates = (table.widths, *(shared if sum(whole) <= page else shared[:2]))
    return min(candidates, key=lambda widths: _count_lines(rows, widths, page))


def stands_across(table: Table, row: Sequence[Inlines]) -> bool:
    """Whether a row of a table is one cell across all its columns."""
    return len(row) < len(table.widths)


def count_row_lines(row: Iterable[Inlines], widths: tuple[int, ...]) -> int:
    """The lines of a row in columns of these shares of the width, or of one that stands across them."""
    cells = list(map(_measure, row))
    return _count_lines([cells], widths if len(cells) == len(widths) else (sum(widths),))


def _list_full(table: Table) -> list[tuple[Inlines, ...]]:
    """The rows that have a cell in each column."""
    return [row for row in table.rows if not stands_across(table, row)]


def _measure(cell: Inlines) -> Measure:
    text = cell[0].text if len(cell) == 1 and isinstance(cell[0], (Text, Value)) else plain_text(cell)
    word = max(keep_words(text).split(" "), key=len)
    whole = len(text) if len(text) > _ONE_LINE else ceil(_widen(text))
    return ceil(_WORD * (_widen(word) + _BROAD * word.count("mm"))), whole


def _widen(text: str) -> float:
    """The signs of a text, each capital for more than one."""
    return len(text) + _CAPITAL * sum(map(str.isupper, text))


def _share(least: list[int], wanted: list[int], page: int) -> tuple[int, ...]:
    """Shares that hold the longest word of each column, and of the rest as much as each wants."""
    more = [max(want - word, 0) for want, word in zip(wanted, least, strict=True)]
    spare = max(page - sum(least), 0)
    widths = [word + spare * (part + 1) / (sum(more) + len(more)) for word, part in zip(least, more, strict=True)]
    exact = [100 * width / sum(widths) for width in widths]
    shares = [int(share) for share in exact]
    # What is left of whole percents goes to those that lost most.
    by_loss = sorted(range(len(exact)), key=lambda place: shares[place] - exact[place])
    for place in by_loss[: 100 - sum(shares)]:
        shares[place] += 1
    return tuple(shares)


def _count_lines(rows: Iterable[list[Measure]], widths: tuple[int, ...], page: int = PAGE) -> int:
    """The lines of a table, as its words fill them; a word wider than its column counts as many."""
    room = [max(page * width / 100 - MARGIN, 1) for width in widths]
    return sum(
        max(
            int((words - 1) // width) + 1 + 4 * (word > width + _LEEWAY)
            for (word, words), width in zip(row, room, strict=True)
        )
        for row in rows
    )
