"""Numbers, references and source marks, computed once in the tree and used by every format."""

import dataclasses
from collections.abc import Iterable, Iterator
from typing import Any, Literal

from specgen.documents.columns import PAGE, SIDEWAYS, arrange_columns
from specgen.documents.empty_cells import fill_cells
from specgen.documents.plain_text import plain_text
from specgen.documents.source_letters import PROPOSED, letter, set_letters
from specgen.model.block import (
    Article,
    Block,
    Emphasis,
    Figure,
    Inline,
    Inlines,
    Item,
    Part,
    ReviewBoxes,
    Strong,
    Table,
    Value,
)
from specgen.model.source import Source

Numbering = Literal["three_part", "plain"]


def number_blocks(
    blocks: Iterable[Block], numbering: Numbering, landscape: bool = False
) -> tuple[tuple[Block, ...], tuple[tuple[str, str], ...]]:
    """The blocks with numbers, references and source marks filled in, and the legend of the marks."""
    counted = list(_count_blocks(blocks, numbering))
    targets = {plain_text(b.title): b.number or plain_text(b.title) for b in counted if isinstance(b, (Part, Article))}
    targets |= _name_figures(block for block in counted if isinstance(block, Figure))
    marks: dict[Source, str] = {}
    page = SIDEWAYS if landscape else PAGE
    marked = tuple(_mark_block(block, marks, targets, page) for block in counted)
    told = sorted(marks.items(), key=lambda pair: pair[1] == PROPOSED)
    return marked, tuple((mark, source.legend) for source, mark in told)


def _count_blocks(blocks: Iterable[Block], numbering: Numbering) -> Iterator[Block]:
    part = article = table = figure = 0
    counts: list[int] = []
    run = None
    for block in blocks:
        if isinstance(block, Part):
            part, article = part + 1, 0
            block = dataclasses.replace(block, number=f"PART {part}" if numbering == "three_part" else "")
        elif isinstance(block, Article):
            article += 1
            counts, run = [], None
            block = dataclasses.replace(block, number=f"{part}.{article:02d}" if numbering == "three_part" else "")
        elif isinstance(block, Item):
            # In an article of a three-part document the letters continue after a table or paragraph.
            if numbering == "plain" and block.run != run:
                counts, run = [], block.run
            counts = counts[: block.level + 1] + [0] * (block.level + 1 - len(counts))
            counts[block.level] += 1
            block = dataclasses.replace(block, number=item_label(counts[-1], block.level, numbering))
        elif isinstance(block, Table) and block.caption:
            table += 1
            block = dataclasses.replace(block, number=f"Table {table}")
        elif isinstance(block, Figure):
            figure += 1
            block = dataclasses.replace(block, number=f"Figure {figure}")
        yield block


def _name_figures(figures: Iterable[Figure]) -> dict[str, str]:
    """The numbers of the figures by the name of their template, of which each kind follows one another: `Figure 2`."""
    numbers: dict[str, list[str]] = {}
    for figure in figures:
        numbers.setdefault(figure.name, []).append(figure.number.removeprefix("Figure "))
    return {
        name: f"Figure {told[0]}"
        if len(told) == 1
        else f"Figures {told[0]} {'and' if len(told) == 2 else 'to'} {told[-1]}"
        for name, told in numbers.items()
    }


def item_label(count: int, level: int, numbering: Numbering) -> str:
    """`A.`, `1.`, `a.` of a three-part document; `1.`, `a.` of another."""
    letters = "Aaa"[level] if numbering == "three_part" else "1aa"[level]
    if level == 1 and numbering == "three_part" or letters == "1":
        return f"{count}."
    text = letter(count)
    return f"{text.upper() if letters == 'A' else text}."


def list_values(blocks: Iterable[Block]) -> list[Value]:
    """Every value that blocks print, in their order."""
    return [value for block in blocks for value in _values(_contents(block))]


def _contents(block: Any) -> Iterator[Inline]:
    """All inline content of a block."""
    if isinstance(block, Table):
        for row in block.rows:
            for cell in row:
                yield from cell
    if isinstance(block, ReviewBoxes):
        for box in (*block.stated, block.stamp):
            for line in box.lines:
                yield from line
    if isinstance(block, Figure):
        yield from block.caption
    yield from getattr(block, "title", ()) or getattr(block, "content", ())


def _values(content: Iterable[Inline]) -> Iterator[Value]:
    for part in content:
        if isinstance(part, Value):
            yield part
        elif isinstance(part, (Strong, Emphasis)):
            yield from _values(part.children)


def _mark_block(block: Any, marks: dict[Source, str], targets: dict[str, str], page: int) -> Any:
    def finish(content: Inlines) -> Inlines:
        return set_letters(content, marks, targets)

    if isinstance(block, (Part, Article)):
        return dataclasses.replace(block, title=finish(block.title))
    if isinstance(block, Table):
        rows = tuple(tuple(map(finish, row)) for row in block.rows)
        header = tuple(map(finish, block.header))
        marked = dataclasses.replace(block, header=header, rows=rows, caption=finish(block.caption))
        return fill_cells(arrange_columns(marked, page))
    if isinstance(block, Figure):
        return dataclasses.replace(block, caption=finish(block.caption))
    return dataclasses.replace(block, content=finish(block.content)) if hasattr(block, "content") else block
