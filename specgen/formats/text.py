"""A document as plain text: for a terminal, and for comparing two versions by eye."""

import re
from collections.abc import Iterable

from specgen.documents.no_break import set_minus
from specgen.model.block import (
    Article,
    Blank,
    Block,
    Box,
    Break,
    CheckBox,
    Contents,
    Document,
    Emphasis,
    Equation,
    Figure,
    Formula,
    Inline,
    Item,
    Letters,
    Link,
    Note,
    Paragraph,
    Part,
    ReviewBoxes,
    Signature,
    Strong,
    Table,
    Text,
    Value,
)

_RULE = "=" * 72
# What stands before a line that changed since the issued set.
_CHANGED = "|| "
# A word of a heading; one with a figure in it is a mark or a code, `WEA-01e`, and stays as it is written.
_WORD, _CODE = re.compile(r"\S+"), re.compile(r"(?=.*\d)(?=.*[a-z])")


def write_text(document: Document) -> str:
    """The whole document, one block per line, tables with bars between their cells."""
    head = [f"{document.id} {document.title.upper()}", *(f"{label}: {text}" for label, text in document.facts), ""]
    body = [
        f"{_CHANGED * bool(line and number in document.changed)}{line}"
        for number, block in enumerate(document.blocks)
        for line in _render_block(block)
    ]
    legend = [f"[{mark}] {text}" for mark, text in document.legend]
    # A line that the user wrote stands behind a bar, so that it is not taken for one of the document.
    lines = (line.replace("\n", "\n    | ") for line in (*head, *body, *([""] if legend else []), *legend))
    return "\n".join(lines) + "\n"


def _raise(heading: str) -> str:
    """A heading in capitals, its codes as they are."""
    return _WORD.sub(lambda word: word[0] if _CODE.match(word[0]) else word[0].upper(), heading)


def _render_block(block: Block) -> list[str]:
    match block:
        case Part():
            return ["", _raise(f"{block.number} {_render_line(block.title)}".strip())]
        case Article():
            return ["", f"{block.number} {_render_line(block.title)}".strip()]
        case Item():
            return [f"{'   ' * block.level}{block.number} {_render_line(block.content)}"]
        case Paragraph():
            return [_render_line(block.content)]
        case Note():
            return [_RULE, _render_line(block.content), _RULE] if block.hold else [f"! {_render_line(block.content)}"]
        case Table():
            caption = [f"{block.number}. {_render_line(block.caption)}"] if block.caption else []
            return caption + [" | ".join(map(_render_line, row)) for row in (block.header, *block.rows)]
        case Equation():
            return [f"{block.title}: {block.plain}"]
        case Figure():
            return [f"{block.number}. {_render_line(block.caption)}", f"[ {block.alt} ]"]
        case Signature():
            return [f"{role}: {name or '____'} signed ____ on ____" for role, name in block.parties]
        case ReviewBoxes():
            return [line for box in (*block.stated, block.stamp) for line in _render_box(box)]
        case Break() | Contents():
            return []
    raise TypeError(f"no text for {block!r}")


def _render_box(box: Box) -> list[str]:
    rows = _render_block(box.table) if box.table else []
    return [f"[ {box.title} ]", *(f"  {line}" for line in (*map(_render_line, box.lines), *rows))]


def _render_line(content: Iterable[Inline]) -> str:
    return set_minus("".join(_render_inline(part) for part in content))


def _render_inline(part: Inline) -> str:
    match part:
        case Text() | Value() | Formula() | Link():
            return part.text
        case Letters():
            return f"[{part.text}]"
        case Strong() | Emphasis():
            return _render_line(part.children)
        case Blank():
            return "____"
        case CheckBox():
            return f"({'x' if part.ticked else ' '}) {part.label}"
    raise TypeError(f"no text for {part!r}")
