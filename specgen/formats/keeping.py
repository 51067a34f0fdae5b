"""What stays on one page: blocks with the block below them, and rows of a table with the row below them."""

from collections.abc import Iterator, Sequence

from specgen.documents.columns import count_row_lines, stands_across
from specgen.documents.plain_text import plain_text
from specgen.model.block import (
    Article,
    Blank,
    Block,
    CheckBox,
    Equation,
    Figure,
    Inlines,
    Item,
    Note,
    Paragraph,
    Part,
    Signature,
    Table,
)

# A table of at most so many rows and lines is not torn: with its heading it then leaves a quarter of a page at most.
ROWS, LINES = 6, 10
# So is one that is filled in by hand in each row, or signed row by row, up to so many rows.
FILLED, SIGNED = 8, 14
# A list of so many items is the notes of the table below it.
NOTES = 4
_TAIL = 3  # lines
# Signs of a paragraph of at most two lines.
_TWO_LINES = 200


def list_kept(blocks: Sequence[Block]) -> list[bool]:
    """For each block, whether it stays on the page of the one below it; headings do by their style."""
    around: list[Block | None] = [None, *blocks, None, None]
    leads = [_leads(block, around[number], *around[number + 2 : number + 4]) for number, block in enumerate(blocks)]
    kept = []
    for number in _find_notes(blocks):
        leads[number] = True
    for number, block in enumerate(blocks):
        below = around[number + 2]
        # What concludes a table or an equation stays with it, unless it leads on to what is below it; of two tables the
        # one below is the result of the other.
        concluded = isinstance(below, (Signature, Table)) or isinstance(below, Paragraph) and not leads[number + 1]
        # A small table below a heading is what the calculation is given: it stays with what is worked out of it.
        given = isinstance(around[number], Article) and isinstance(block, Table) and is_whole(block)
        begins = given and isinstance(below, Paragraph)
        kept.append(leads[number] or begins or isinstance(block, (Table, Equation)) and concluded)
    return kept


def _find_notes(blocks: Sequence[Block]) -> Iterator[int]:
    """The places of the items of short lists above a table, which stay on its page."""
    start = 0
    for number, block in enumerate(blocks):
        if isinstance(block, Table) and 0 < number - start <= NOTES:
            yield from range(start, number)
        if not isinstance(block, Item):
            start = number + 1


def _leads(block: Block, above: Block | None, below: Block | None, next_below: Block | None) -> bool:
    """Whether a block leads to the one below it, or would stand alone on a page without it."""
    if isinstance(block, Note):
        return isinstance(below, Note)
    if not isinstance(block, (Paragraph, Item)) or below is None:
        return False
    if isinstance(below, (Table, Figure, Signature, Note)) or any(isinstance(part, CheckBox) for part in block.content):
        return True
    if isinstance(block, Item):
        return isinstance(below, Item) and _holds_item(block, above, below, next_below)
    begun = isinstance(above, (Part, Article)) and _is_short(block)
    return begun and isinstance(below, (Paragraph, Item))


def _holds_item(item: Item, above: Block | None, below: Item, next_below: Block | None) -> bool:
    """Whether an item is a title, or a short one first of its list or above a short one that ends it."""
    if below.level > item.level:
        return True
    first = not _belongs(above, item) and _is_short(item)
    ends = below.level == item.level and not isinstance(next_below, Table) and not _belongs(next_below, item)
    return first or ends and _is_short(below)


def _is_short(block: Paragraph | Item) -> bool:
    return len(plain_text(block.content)) <= _TWO_LINES


def _belongs(block: Block | None, item: Item) -> bool:
    """Whether a block beside an item stands in its list, or in one below it."""
    return isinstance(block, Item) and block.level >= item.level


def _is_signed(row: Sequence[Inlines]) -> bool:
    """Whether a row is signed and dated."""
    return any(isinstance(part, Blank) and part.kind == "date" for cell in row for part in cell)


def _is_filled(row: Sequence[Inlines]) -> bool:
    """Whether a row is filled in by hand."""
    return any(isinstance(part, (Blank, CheckBox)) for cell in row for part in cell)


def is_whole(table: Table) -> bool:
    """Whether a table is not torn: a small one, or one that is filled in or signed row by row."""
    if len(table.rows) <= ROWS and sum(count_row_lines(row, table.widths) for row in table.rows) <= LINES:
        return True
    if len(table.rows) <= FILLED and all(map(_is_filled, table.rows)):
        return True
    return len(table.rows) <= SIGNED and all(map(_is_signed, table.rows))


def list_kept_rows(table: Table, kept_below: bool) -> list[bool]:
    """For each row, whether it stays on the page of the next; the last one, whether with what is below the table.

    Two rows of few lines at the end of a table do not stand alone on a page. A row whose first cell is empty belongs to
    the row above it, and one that stands across to the row below it.
    """
    last, small = len(table.rows) - 1, is_whole(table)
    low = sum(count_row_lines(row, table.widths) for row in table.rows[-2:]) <= _TAIL
    together = {0, last - 1, *({last - 2} if low else ())}
    kept = [
        small or number in together or stands_across(table, row) or not table.rows[number + 1][0]
        for number, row in enumerate(table.rows[:last])
    ]
    return [*kept, kept_below] if table.rows else []
