"""The letters of sources: one that a sentence or cell has alone stands at its end, of several each at its figure.

A figure of a list has its own.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from specgen.model.block import Emphasis, Inline, Inlines, Letters, Ref, Strong, Text, Value
from specgen.model.source import Kind, Source

Marks = dict[Source, str]
# The letter of figures that nobody has verified, the same in every document and on every sheet of a form.
PROPOSED = "p"
# Said beside the sources of a document.
WITHOUT_LETTER = "Figures without a letter: of the section or text named in the row or sentence, or this project's own."
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


def name_mark(source: Source, marks: Marks) -> str:
    """The letter of a source in a document: the next free one; what is only proposed has the same in every document."""
    if source not in marks:
        marks[source] = PROPOSED if source.kind is Kind.UNVERIFIED else _next_letter(marks)
    return marks[source]


def _next_letter(marks: Marks) -> str:
    """The first letter that marks no source; that of what is proposed is passed over."""
    given = {*marks.values(), PROPOSED}
    place = len(given)
    while letter(place) in given:
        place += 1
    return letter(place)


@dataclass
class _Sentence:
    """The parts of a sentence or cell so far, each with the letters of its sources."""

    parts: list[tuple[Inline, tuple[str, ...]]] = field(default_factory=list)
    has_letters: bool = False  # whether any of its figures has a source

    def add(self, part: Inline, marks: tuple[str, ...] = ()) -> None:
        """A further part with the letters of its sources."""
        self.parts.append((part, marks))
        self.has_letters = self.has_letters or bool(marks)

    def end(self) -> Iterator[Inline]:
        """The parts, then the one letter that they share; else each at its figure."""
        told = {mark for _, marks in self.parts for mark in marks}
        # Behind a value that is still to be given the letter would seem to be its own.
        apart = len(told) > 1 or any(isinstance(part, Value) and part.open for part, _ in self.parts)
        waiting: dict[str, None] = {}
        for part, marks in self.parts:
            # What has no words of its own marks the figure before it.
            if apart and waiting and not (isinstance(part, Value) and not part.text):
                yield _join(waiting)
                waiting.clear()
            yield part
            waiting |= dict.fromkeys(marks)
        if waiting:
            yield _join(waiting)
        self.parts.clear()
        self.has_letters = False


def _set(content: Inlines, marks: Marks, targets: dict[str, str]) -> Iterator[Inline]:
    sentence = _Sentence()
    for part in content:
        if isinstance(part, Text) and part.text == GAP:
            yield from sentence.end()
            yield part
        elif isinstance(part, Text) and sentence.has_letters:
            first, *others = _END.split(part.text, maxsplit=1)
            sentence.add(Text(first) if others else part)
            if others:
                yield from sentence.end()
                yield from (Text(rest) for rest in others if rest)
        else:
            sentence.add(*_resolve(part, marks, targets))
            if isinstance(part, Value) and part.lettered:
                yield from sentence.end()
    yield from sentence.end()


def _resolve(part: Inline, marks: Marks, targets: dict[str, str]) -> tuple[Inline, tuple[str, ...]]:
    """A part with its references resolved, and the letters of its sources."""
    if isinstance(part, Value) and part.source is not None:
        return part, (name_mark(part.source, marks),)
    if isinstance(part, (Strong, Emphasis)):
        children = [_resolve(child, marks, targets) for child in part.children]
        told = tuple(dict.fromkeys(mark for _, of in children for mark in of))
        return type(part)(tuple(child for child, _ in children)), told
    if isinstance(part, Ref):
        return Text(targets.get(part.target, part.target)), ()
    return part, ()


def _join(marks: Iterable[str]) -> Letters:
    return Letters(", ".join(sorted(marks, key=lambda mark: (len(mark), mark))))
