"""Which blocks and rows of a Word file stay on one page. Expectations are ours, from how a page reads."""

from typing import Literal

import pytest

from specgen.formats.keeping import list_kept, list_kept_rows
from specgen.model.block import (
    Article,
    Blank,
    Block,
    Equation,
    Inlines,
    Item,
    Note,
    Paragraph,
    Signature,
    Table,
    Text,
)

HEAD = Article((Text("Preparation"),))
TABLE = Table(((Text("Member"),),), (((Text("E1"),),),), (100,))
LONG = "Cover windows, trim, and surfaces that overspray can reach. " * 5


def item(level: int = 1, words: str = "Stir the material.") -> Item:
    return Item((Text(words),), level, 1)


def line(words: str = "Conclusion: OK.") -> Paragraph:
    return Paragraph((Text(words),))


CASES: dict[str, tuple[list[Block], list[bool]]] = {
    "a title with the first two of its items, and the last two together": (
        [item(0), item(), item(), item(), item(), item()],
        [True, True, False, False, True, False],
    ),
    "the last item with its caution and its hold point": (
        [item(), item(), item(), Note((Text("Caution"),)), Note((Text("HOLD POINT"),), hold=True), item(0)],
        [True, True, True, True, False, False],
    ),
    "a long item stands alone": ([item(0, LONG), item(0, LONG), item(0, LONG)], [False, False, False]),
    "the last before a table leads to it, and stays with no other": (
        [item(0), item(0), item(0), item(0), item(0), TABLE],
        [True, False, False, False, True, False],
    ),
    "up to four items are the notes of the table below them": (
        [HEAD, item(0, LONG), item(0), item(0), item(0), TABLE],
        [False, True, True, True, True, False],
    ),
    "a conclusion with its table": ([line("By member:"), TABLE, line(), HEAD], [True, True, False, False]),
    "what leads to the next table does not hold the one above": (
        [TABLE, line("Wall W2:"), TABLE],
        [False, True, False],
    ),
    "a conclusion with its equation": ([Equation("width", "W", "2 * D", "2 * 3", "6", "in"), line()], [True, False]),
    "what is given below a heading with what is worked out of it": (
        [HEAD, TABLE, line("Constants:"), TABLE],
        [False, True, True, False],
    ),
    "signatures with the table above them": ([TABLE, Signature((("Owner", ""),))], [True, False]),
    "a short line below a heading with the next": ([HEAD, line(), line()], [False, True, False]),
}


@pytest.mark.parametrize("case", CASES)
def test_blocks_that_stay_on_one_page(case: str) -> None:
    blocks, kept = CASES[case]
    assert list_kept(blocks) == kept


def table(*rows: tuple[str, str]) -> Table:
    cells: list[tuple[Inlines, ...]] = [tuple((Text(word),) if word else () for word in row) for row in rows]
    return Table(((Text("Name"),), (Text("Words"),)), tuple(cells), (50, 50))


@pytest.mark.parametrize(
    ("rows", "kept"),
    [
        ([("J1", "1/2 in")] * 4, [True, True, True, False]),
        ([("J1", LONG)] * 4, [True, False, True, False]),
        ([("J1", "1/2 in")] * 8, [True, False, False, False, False, True, True, False]),
        (
            [("C920", "a"), ("C1193", "b"), ("", "c"), ("", "d")] * 2,
            [True, True, True, False, False, True, True, False],
        ),
    ],
)
def test_rows_that_stay_on_one_page(rows: list[tuple[str, str]], kept: list[bool]) -> None:
    assert list_kept_rows(table(*rows), kept_below=False) == kept
    assert list_kept_rows(table(*rows), kept_below=True) == [*kept[:-1], True]


@pytest.mark.parametrize(("kind", "whole"), [("date", True), ("text", False)])
def test_a_table_that_is_signed_row_by_row_is_not_torn(kind: Literal["text", "date"], whole: bool) -> None:
    rows = tuple(((Text("Substrate"),), (Blank("Released", kind),)) for _ in range(12))
    signed = Table(((Text("Hold point"),), (Text("Signed, date"),)), rows, (50, 50))
    assert all(list_kept_rows(signed, kept_below=False)[:-1]) is whole


@pytest.mark.parametrize(("count", "whole"), [(8, True), (9, False)])
def test_a_short_table_that_is_filled_in_by_hand_is_not_torn(count: int, whole: bool) -> None:
    rows = tuple(((Text("Gun"),), (Blank("Gun"),)) for _ in range(count))
    settings = Table(((Text("Setting"),), (Text("Accepted"),)), rows, (50, 50))
    assert all(list_kept_rows(settings, kept_below=False)[:-1]) is whole


def test_a_table_without_rows_keeps_none() -> None:
    assert list_kept_rows(table(), kept_below=True) == []
