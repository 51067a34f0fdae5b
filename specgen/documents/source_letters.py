"""The letters of sources: gathered from the figures of a sentence or cell and set at its end, each once.

A figure of a list has its own.
"""

import re
from collections.abc import Iterator

from specgen.model.block import Emphasis, Inline, Inlines, Letters, Ref, Strong, Text, Value
from specgen.model.source import Source

Marks = dict[Source, str]
# Said beside the sources of a document.
WITHOUT_LETTER = "Figures without a letter: of the section or text named in the row or sentence, or this project’s own."
# Between entries that stand beside each other in a cell, each with its own letters.
GAP = "   "
# The end of a sentence within words of a template; not that of a short form.
_END = re.compile(r"(?<=[.!?])(?<![ \u00a0]in\.)(?<!No\.)(?<!Nos\.)(?<!\b[A-Z]\.)(?= +(?:[A-Z]|$)|$)")


def set_letters(content: Inlines, marks: Marks, targets: dict[str, str]) -> Inlines:
    """The content with the letters of its sources set and its references resolved; `marks` takes up new sources."""
    if len(content) == 1 and type(content[0]) is Text:  # nearly every cell of a long table
        return content
    return tuple(_set(content, marks, targets))


def letter(count: int) -> str:
    """The letter of a count from 1: `a` to `z`, then `aa`."""
    text = ""
    while count:
        count, rest = divmod(count - 1, 26)
        text = chr(ord("a") + rest) + text
    return text


def _set(content: Inlines, marks: Marks, targets: dict[str, str]) -> Iterator[Inline]:
    waiting: dict[str, None] = {}
    for part in content:
        if isinstance(part, Text) and part.text == GAP and waiting:
            yield from (_join(waiting), part)
            waiting.clear()
        elif isinstance(part, Text) and waiting:
            first, *others = _END.split(part.text, maxsplit=1)
            if others:
                yield from (Text(first), _join(waiting))
                waiting.clear()
            yield from (Text(rest) for rest in others or [part.text] if rest)
        else:
            yield _resolve(part, marks, targets, waiting)
            if waiting and isinstance(part, Value) and part.lettered:
                yield _join(waiting)
                waiting.clear()
    if waiting:
        yield _join(waiting)


def _resolve(part: Inline, marks: Marks, targets: dict[str, str], waiting: dict[str, None]) -> Inline:
    """A part with its references resolved; the letters of its sources join those that wait."""
    if isinstance(part, Value) and part.source is not None:
        waiting[marks.setdefault(part.source, letter(len(marks) + 1))] = None
    elif isinstance(part, (Strong, Emphasis)):
        return type(part)(tuple(_resolve(child, marks, targets, waiting) for child in part.children))
    elif isinstance(part, Ref):
        return Text(targets.get(part.target, part.target))
    return part


def _join(waiting: dict[str, None]) -> Letters:
    return Letters(", ".join(sorted(waiting, key=lambda mark: (len(mark), mark))))
