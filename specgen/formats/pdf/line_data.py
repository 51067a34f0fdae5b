"""A line of text as plain data for the page template: texts, and one key for each other kind of inline."""

import re
from collections.abc import Iterable, Iterator
from typing import Any

from specgen.documents.no_break import NO_BREAK, NO_BREAK_HYPHEN, keep_together, keep_words
from specgen.formats.equation.expression import parse_expression
from specgen.formats.pdf.equation_data import describe_node
from specgen.model.block import (
    Blank,
    CheckBox,
    Emphasis,
    Formula,
    Inline,
    Inlines,
    Letters,
    Link,
    Strong,
    Text,
    Value,
)

Line = str | list[Any]  # a text alone, or texts and objects in order

# What an unbreakable hyphen joins, a unit over another, the ends of lines; and words longer than a line may be.
_SPECIAL = re.compile(f"[\\w/.]*(?:{NO_BREAK_HYPHEN}[\\w/.]+)+|[\\w·]{{1,12}}/[^\\W\\d]\\w{{0,8}}|\n|{NO_BREAK_HYPHEN}")
# An address is copied from the page, and stays whole.
_ENDLESS = re.compile(r"(?<!\S)(?!\S+@\S+\.\w+(?!\S))\S{28,}")
_MAY_BREAK = "\u200b"
# What stands between the two is laid out by itself and does not turn the words around it.
_ISOLATE, _RELEASE = "\u2068", "\u2069"
# Letters that run from right to left: Hebrew, Arabic and their kin.
_TURNED = re.compile("[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]")


def describe_line(content: Inlines) -> Line:
    """The data of a line, its numbers kept with their units."""
    if len(content) == 1 and type(content[0]) is Text:  # nearly every cell of a long table
        return describe_words(content[0].text)
    return _join(piece for part in keep_together(content) for piece in _describe_inline(part))


def describe_words(text: str) -> Line:
    """The data of words that stand alone."""
    return _join(_split_words(keep_words(text)))


def _join(pieces: Iterable[Any]) -> Line:
    """Pieces in order, texts beside each other as one."""
    joined: list[Any] = []
    for piece in pieces:
        if isinstance(piece, str) and joined and isinstance(joined[-1], str):
            joined[-1] += piece
        else:
            joined.append(piece)
    if not joined:
        return ""
    return joined[0] if len(joined) == 1 and isinstance(joined[0], str) else joined


def _split_words(text: str) -> Iterator[Any]:
    """The words, with what stays on one line and the ends of lines as objects of their own."""
    text = _ENDLESS.sub(lambda found: _MAY_BREAK.join(found[0]), text)
    if NO_BREAK_HYPHEN not in text and "\n" not in text and "/" not in text:
        yield text
        return
    end = 0
    for found in _SPECIAL.finditer(text):
        yield text[end : found.start()]
        yield {"end": True} if found[0] == "\n" else {"whole": found[0].replace(NO_BREAK_HYPHEN, "-")}
        end = found.end()
    yield text[end:]


def _describe_inline(part: Inline) -> Iterator[Any]:
    match part:
        case Text() | Link():
            yield from _split_words(part.text)
        case Value():
            if part.open:
                yield {"open": _join(_split_words(part.text))}
            elif _TURNED.search(part.text):
                yield from (_ISOLATE, *_split_words(part.text), _RELEASE)
            else:
                yield from _split_words(part.text)
        case Letters():
            yield {"letters": part.text.replace(" ", NO_BREAK)}
        case Strong():
            yield {"strong": _join(piece for child in part.children for piece in _describe_inline(child))}
        case Emphasis():
            yield {"emphasis": _join(piece for child in part.children for piece in _describe_inline(child))}
        case Formula():
            yield {"formula": describe_node(parse_expression(part.text)), "plain": part.text}
        case Blank():
            yield {"blank": part.kind, "label": part.label, "name": part.name}
        case CheckBox():
            first, space, rest = keep_words(part.label).partition(" ")
            tick = {"tick": _join(_split_words(first)), "label": part.label, "name": part.name}
            yield tick | ({"ticked": True} if part.ticked else {})
            yield from _split_words(space + rest)
        case _:
            raise TypeError(f"no PDF for {part!r}")
