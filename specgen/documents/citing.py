"""Sources of the figures of a document, as a reader is to find them: the controlling texts."""

import dataclasses
from collections.abc import Callable, Iterable
from typing import Any

from specgen.model.block import Block, Emphasis, Inline, Inlines, Strong, Table, Value
from specgen.model.source import Kind, Source

Cite = Callable[[Source], Source]


def cite_blocks(blocks: Iterable[Block], cite: Cite) -> tuple[Block, ...]:
    """The blocks with the source of each value as documents cite it."""
    return tuple(_cite_block(block, cite) for block in blocks)


def _cite_block(block: Any, cite: Cite) -> Any:
    def over(content: Inlines) -> Inlines:
        return tuple(_cite_inline(part, cite) for part in content)

    if isinstance(block, Table):
        rows = tuple(tuple(map(over, row)) for row in block.rows)
        return dataclasses.replace(block, header=tuple(map(over, block.header)), rows=rows, caption=over(block.caption))
    held = {
        name: over(getattr(block, name))
        for name in ("title", "content", "caption")
        if isinstance(getattr(block, name, 0), tuple)
    }
    return dataclasses.replace(block, **held) if held else block


def _cite_inline(part: Inline, cite: Cite) -> Inline:
    if isinstance(part, Value) and part.source is not None:
        cited = cite(part.source)
        # What says no figure of its own, such as the title of a criterion, is agreed with the line it heads.
        own = cited.kind is Kind.UNVERIFIED and not part.about
        return dataclasses.replace(part, source=None if own else cited)
    if isinstance(part, (Strong, Emphasis)):
        return type(part)(tuple(_cite_inline(child, cite) for child in part.children))
    return part
