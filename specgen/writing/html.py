"""A document as one HTML file: no outside request, readable on a phone, printable."""

from collections.abc import Iterable, Iterator
from html import escape
from itertools import groupby
from pathlib import Path
from string import Template as Frame
from typing import Any

from ..vocabulary.block import (
    Article,
    Blank,
    Block,
    Break,
    CheckBox,
    Contents,
    Document,
    Emphasis,
    Equation,
    Formula,
    Inline,
    Inlines,
    Item,
    Note,
    Paragraph,
    Part,
    Signature,
    Strong,
    Table,
    Text,
    Value,
)
from . import mathml


def written(document: Document, templates: Path) -> bytes:
    """The whole page, with the style of `templates/style.css` in it."""
    frame = Frame((templates / "page.html").read_text("utf-8"))
    page = frame.substitute(
        title=escape(f"{document.project}: {document.title}"),
        style=(templates / "style.css").read_text("utf-8"),
        head=_head(document),
        body="\n".join(_body(document)),
        legend=_legend(document),
        kind=" ".join(
            filter(
                None,
                [
                    "three-part" if document.numbering == "three_part" else "plain",
                    "draft" if document.draft else "",
                    "wide" if document.landscape else "",
                ],
            )
        ),
    )
    return page.encode()


def _head(document: Document) -> str:
    rows = "".join(f"<div><dt>{escape(label)}</dt><dd>{escape(text)}</dd></div>" for label, text in document.facts)
    return f'<p class="id">{escape(document.id)}</p><h1>{escape(document.title)}</h1><dl>{rows}</dl>'


def _contents(blocks: tuple[Block, ...]) -> str:
    """Links to the parts and articles."""
    rows = [
        f'<li class="{type(b).__name__.lower()}"><a href="#{_anchor(n)}">{escape(b.number)} {_line(b.title)}</a></li>'
        for n, b in enumerate(blocks)
        if isinstance(b, (Part, Article))
    ]
    return f'<nav aria-label="Contents"><ul>{"".join(rows)}</ul></nav>'


def _anchor(number: int) -> str:
    return f"b{number}"


def _legend(document: Document) -> str:
    if not document.legend:
        return ""
    rows = "".join(f"<div><dt>{mark}</dt><dd>{escape(text)}</dd></div>" for mark, text in document.legend)
    own = "<p>Figures without a letter are this project’s own.</p>"
    return f'<h2>Sources of the figures</h2><dl class="legend">{rows}</dl>{own}'


def _body(document: Document) -> Iterator[str]:
    """Blocks in order; items that follow one another share their lists."""
    numbered = list(enumerate(document.blocks))
    for listed, run in groupby(numbered, key=lambda pair: isinstance(pair[1], Item)):
        if listed:
            yield _items([block for _, block in run if isinstance(block, Item)])
        else:
            for number, block in run:
                yield _contents(document.blocks) if isinstance(block, Contents) else _block(number, block)


def _items(items: list[Item]) -> str:
    """Nested lists; each item brings its own number, so that every format shows the same."""
    made: list[str] = []
    depth = -1
    for item in items:
        while depth < item.level:
            made.append('<ol class="items">')
            depth += 1
        while depth > item.level:
            made.append("</li></ol>")
            depth -= 1
        if made[-1] != '<ol class="items">':
            made.append("</li>")
        made.append(f'<li><span class="n">{item.number}</span> {_line(item.content)}')
    return "".join(made) + "</li></ol>" * (depth + 1)


def _block(number: int, block: Block) -> str:
    match block:
        case Part():
            return f'<h2 id="{_anchor(number)}">{_numbered(block)}</h2>'
        case Article():
            return f'<h3 id="{_anchor(number)}">{_numbered(block)}</h3>'
        case Paragraph():
            return f"<p>{_line(block.content)}</p>"
        case Note():
            return f'<p class="note" role="note">{_line(block.content)}</p>'
        case Table():
            return _table(block)
        case Equation():
            return f'<div class="equation"><p>{escape(block.title)}</p>{mathml.display(block)}</div>'
        case Signature():
            return _signatures(block)
        case Break():
            return '<hr class="break">'
    raise TypeError(f"no HTML for {block!r}")


def _numbered(block: Any) -> str:
    return f'<span class="n">{escape(block.number)}</span> {_line(block.title)}' if block.number else _line(block.title)


def _table(table: Table) -> str:
    caption = f"<caption>{table.number}. {_line(table.caption)}</caption>" if table.caption else ""
    columns = "".join(f'<col style="width:{width}%">' for width in table.widths)
    head = "".join(f'<th scope="col">{_line(c)}</th>' for c in table.header)
    rows = "".join(f"<tr>{''.join(f'<td>{_line(c)}</td>' for c in row)}</tr>" for row in table.rows)
    return (
        f'<div class="sheet"><table>{caption}<colgroup>{columns}</colgroup><thead><tr>{head}</tr></thead>'
        f"<tbody>{rows}</tbody></table></div>"
    )


def _signatures(block: Signature) -> str:
    rows = "".join(
        f'<tr><th scope="row">{escape(role)}</th><td>{escape(name)}</td><td></td><td></td></tr>'
        for role, name in block.parties
    )
    head = "".join(f'<th scope="col">{title}</th>' for title in ("Party", "Name", "Signature", "Date"))
    return f'<div class="sheet"><table class="sign"><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table></div>'


def _line(content: Inlines | Iterable[Inline]) -> str:
    return "".join(map(_inline, content))


def _inline(part: Inline) -> str:
    match part:
        case Text():
            return escape(part.text)
        case Value():
            text = f"<bdi>{escape(part.text)}</bdi>"
            mark = f"<sup>{part.mark}</sup>" if part.mark else ""
            return f'<span class="open">{text}</span>' if part.open else text + mark
        case Strong():
            return f"<strong>{_line(part.children)}</strong>"
        case Emphasis():
            return f"<em>{_line(part.children)}</em>"
        case Formula():
            return mathml.inline(part.text)
        case Blank():
            return f'<span class="blank" role="img" aria-label="{escape(part.label)}: to be filled in"></span>'
        case CheckBox():
            return f'<span class="box" role="img" aria-label="box to tick"></span>&nbsp;{escape(part.label)}'
    raise TypeError(f"no HTML for {part!r}")
