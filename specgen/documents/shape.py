"""The shape that numbers need: lists three levels deep, parts before articles, headings where one is referred to."""

import re
from collections.abc import Iterator
from typing import Any

from specgen.documents.catalogue import Template
from specgen.documents.plain_text import plain_text
from specgen.model.block import Article, Block, Emphasis, Figure, Item, Part, Ref, Strong, Table
from specgen.model.problem import Problem, Refused
from specgen.model.suggest import suggest

DEEPEST = 2  # counted from 0: A., 1., a.
_LISTED = re.compile(r" *(?:\d+\.|[-*+]) ")


def check_shape(blocks: tuple[Block, ...], template: Template, lines: dict[int | str, int]) -> None:
    """Refuse blocks that cannot be numbered; `lines` tells where a template refers to a heading."""
    titles = [plain_text(block.title) for block in blocks if isinstance(block, (Part, Article))]
    titles += [block.name for block in blocks if isinstance(block, Figure)]
    begun = template.numbering != "three_part"
    for block in blocks:
        begun = begun or isinstance(block, Part)
        if not begun and isinstance(block, (Article, Item)):
            raise _refuse(
                template, "a three-part document begins with no heading", "begin it with # ", template.first_line
            )
        if isinstance(block, Item) and block.level > DEEPEST:
            deep = _find_line(
                template, lambda line: bool(_LISTED.match(line)) and line.startswith(" " * 3 * DEEPEST + " ")
            )
            raise _refuse(template, "a list is more than three levels deep", "list less deep", deep)
        for ref in _refs(block):
            if ref.target not in titles and not ref.else_named:
                line = lines.get(ref.target, 0)
                what = f"it refers to {ref.target!r}, and the document has no such heading"
                raise _refuse(template, what, suggest(ref.target, titles), line)


def _refs(block: Any) -> Iterator[Ref]:
    """The references of a block."""
    waiting = [*getattr(block, "title", ()), *getattr(block, "content", ())]
    if isinstance(block, Table):
        waiting += [part for row in block.rows for cell in row for part in cell]
    while waiting:
        part = waiting.pop()
        waiting += part.children if isinstance(part, (Strong, Emphasis)) else ()
        if isinstance(part, Ref):
            yield part


def _find_line(template: Template, holds: Any) -> int:
    """The first line of the file for which something holds; 0 if there is none."""
    lines = enumerate(template.words.split("\n"), template.first_line)
    return next((number for number, line in lines if holds(line)), 0)


def _refuse(template: Template, what: str, hint: str, line: int) -> Refused:
    return Refused(Problem(f"the template cannot be used: {what}", hint, "", template.file, line))
