"""A document as one HTML file: no outside request, readable on a phone, printable."""

import re
from collections.abc import Iterable, Iterator
from html import escape
from itertools import groupby
from pathlib import Path

from specgen.documents.columns import stands_across
from specgen.documents.plain_text import plain_text
from specgen.documents.source_letters import WITHOUT_LETTER
from specgen.documents.template_overrides import frame_of, style_of
from specgen.formats.equation import mathml
from specgen.formats.html_inline import name_anchor, render_label, render_line, render_words
from specgen.model.block import (
    END_OF_SECTION,
    Article,
    Block,
    Box,
    Break,
    Contents,
    Document,
    Equation,
    Figure,
    Inlines,
    Item,
    Note,
    Paragraph,
    Part,
    ReviewBoxes,
    Signature,
    Table,
)

# The name and description of a drawing in a file of its own; the page gives it others, with its number.
_OWN_WORDS = re.compile(r"\s*<(title|desc)>[^<]*</\1>")
# By the Content Security Policy of the W3C: nothing is fetched, and nothing runs.
_POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:"
_CHANGED = '<span class="unseen">Changed. </span>'
# A row that stands across its table begins a group of rows.
_ACROSS, _BEGIN = '<th scope="rowgroup"', "</tbody><tbody>"
_MANY = 4  # columns from which on the rows of a table stand as cards on a phone


def write_html(document: Document, templates: Path, own: Path | None = None) -> bytes:
    """The whole page with its style sheet inside; frame and style may come from a firm's folder `own`."""
    parts = render_parts(document) | {"style": style_of(templates, own), "policy": _POLICY}
    return frame_of(templates, own).substitute(parts).encode()


def render_parts(document: Document) -> dict[str, str]:
    """What fills in the frame of a page, by name, save its style and its policy."""
    kinds = (
        "three-part" if document.numbering == "three_part" else "plain",
        "draft" if document.draft else "",
        "wide" if document.landscape else "",
    )
    return {
        "title": escape(f"{document.project}: {document.title}"),
        "head": _render_head(document),
        "body": "\n".join(_render_body(document)),
        "legend": _render_legend(document),
        "kind": " ".join(filter(None, kinds)),
    }


def _render_head(document: Document) -> str:
    rows = "".join(
        f"<div><dt>{escape(label)}</dt><dd>{render_words(text)}</dd></div>" for label, text in document.facts
    )
    firm = f' <span class="firm">{render_words(document.firm)}</span>' if document.firm else ""
    return f'<p class="id">{escape(document.id)}{firm}</p><h1>{escape(document.title)}</h1><dl>{rows}</dl>'


def _render_contents(blocks: tuple[Block, ...]) -> str:
    """Links to the parts and articles."""
    rows = [
        f'<li class="{type(b).__name__.lower()}">'
        f'<a href="#{name_anchor(n)}">{escape(b.number)} {render_line(b.title)}</a></li>'
        for n, b in enumerate(blocks)
        if isinstance(b, (Part, Article))
    ]
    return f'<nav aria-label="Contents"><ul>{"".join(rows)}</ul></nav>'


def _render_legend(document: Document) -> str:
    if not document.legend:
        return ""
    rows = "".join(f"<div><dt>{mark}</dt><dd>{render_words(text)}</dd></div>" for mark, text in document.legend)
    return f'<h2>Sources of the figures</h2><p>{WITHOUT_LETTER}</p><dl class="legend">{rows}</dl>'


def _render_body(document: Document) -> Iterator[str]:
    """Blocks in order; items that follow one another share their lists."""
    numbered = list(enumerate(document.blocks))
    title, tables = document.title, 0
    for listed, run in groupby(numbered, key=lambda pair: isinstance(pair[1], Item)):
        if listed:
            yield _render_items([(block, n in document.changed) for n, block in run if isinstance(block, Item)])
            continue
        for number, block in run:
            if isinstance(block, (Part, Article)):
                title, tables = plain_text(block.title), 0
            tables += isinstance(block, Table)
            if isinstance(block, Contents):
                written = _render_contents(document.blocks)
            elif isinstance(block, Table):
                written = _render_table(block, title if tables == 1 else f"{title}, table {tables}")
            else:
                written = _render_block(number, block)
            yield _mark_changed(written) if number in document.changed else written


def _mark_changed(written: str) -> str:
    """A block with a line at its left, named for those who do not see it."""
    opened, _, rest = written.partition(">")
    kind = opened.replace(' class="', ' class="changed ', 1) if ' class="' in opened else f'{opened} class="changed"'
    return f"{kind}>{_CHANGED}{rest}"


def _render_items(items: list[tuple[Item, bool]]) -> str:
    """Nested lists of items, and whether each has changed; an item carries its number, the same in every format."""
    parts: list[str] = []
    depth = -1
    for item, changed in items:
        if item.level <= depth:
            parts.append("</li></ol>" * (depth - item.level) + "</li>")
        # A list that opens on a deeper level stands in an item without words: lists hold nothing but items.
        parts.append("<li>".join(['<ol class="items">'] * (item.level - depth)))
        depth = item.level
        line = f'<span class="n">{item.number}</span> {render_line(item.content)}'
        # The line stands beside the words of the item alone, and not beside the list within it.
        parts.append(f'<li><div class="changed">{_CHANGED}{line}</div>' if changed else f"<li>{line}")
    return "".join(parts) + "</li></ol>" * (depth + 1)


def _render_block(number: int, block: Block) -> str:
    match block:
        case Part():
            return f'<h2 id="{name_anchor(number)}">{_render_title(block)}</h2>'
        case Article():
            return f'<h3 id="{name_anchor(number)}">{_render_title(block)}</h3>'
        case Paragraph():
            kind = ' class="end"' if plain_text(block.content) == END_OF_SECTION else ""
            return f"<p{kind}>{render_line(block.content)}</p>"
        case Note():
            kind = "note hold" if block.hold else "note"
            return f'<p class="{kind}" role="note">{render_line(block.content)}</p>'
        case Equation():
            return f'<div class="equation"><p>{render_words(block.title)}</p>{mathml.render_display(block)}</div>'
        case Figure():
            return _render_figure(number, block)
        case Signature():
            return _render_signatures(block)
        case ReviewBoxes():
            return _render_boxes(block)
        case Break():
            return '<hr class="break">'
    raise TypeError(f"no HTML for {block!r}")


def _render_figure(number: int, figure: Figure) -> str:
    """The drawing itself within the page, named and described for a screen reader, and its caption."""
    name = name_anchor(number)
    said = (
        f'<title id="{name}t">{escape(figure.number)}. {escape(plain_text(figure.caption))}</title>'
        f'<desc id="{name}d">{escape(figure.alt)}</desc>'
    )
    svg = _OWN_WORDS.sub("", figure.svg, count=2).replace('id="', f'id="{name}')
    opened, _, rest = svg.partition(">")
    drawing = f'{opened} role="img" aria-labelledby="{name}t {name}d">{said}{rest}'
    caption = f"{render_words(figure.number)}. {render_line(figure.caption)}"
    return f'<figure id="{name}">{drawing}<figcaption>{caption}</figcaption></figure>'


def _render_title(block: Part | Article) -> str:
    return (
        f'<span class="n">{escape(block.number)}</span> {render_line(block.title)}'
        if block.number
        else render_line(block.title)
    )


def _render_boxes(boxes: ReviewBoxes) -> str:
    stated = "".join(f'<div class="stated">{_render_box(box)}</div>' for box in boxes.stated)
    return f'<div class="boxes"><div>{stated}</div><div class="stamp">{_render_box(boxes.stamp)}</div></div>'


def _render_box(box: Box) -> str:
    lines = "".join(f"<p>{render_line(line)}</p>" for line in box.lines)
    table = _render_table(box.table, box.title) if box.table else ""
    return f'<p class="head">{render_words(box.title)}</p>{lines}{table}'


def _render_table(table: Table, title: str) -> str:
    """The table; one without a caption is named by `title` for screen readers."""
    number = f"{escape(table.number)}. " if table.number else ""
    caption = f"{number}{render_line(table.caption)}" if table.caption else escape(title)
    labels = [f' data-label="{render_label(plain_text(column))}"' for column in table.header]
    many = len(labels) >= _MANY
    kinds = [
        f'{label} class="figure"' if n in table.figures else label
        for n, label in enumerate(labels if many else [""] * len(labels))
    ]
    return _render_sheet(
        f"<caption>{caption}</caption>" if table.caption else f'<caption class="unseen">{caption}</caption>',
        "".join(f'<col style="width:{width}%">' for width in table.widths),
        (render_line(column) for column in table.header),
        (
            _render_across(row[0], len(kinds))
            if stands_across(table, row)
            else _render_cells(map(render_line, row), kinds)
            for row in table.rows
        ),
        "many" if many else "",
    )


def _render_signatures(block: Signature) -> str:
    titles = ("Party", "Name", "Signature", "Date")
    labels = [f' data-label="{title}"' for title in titles]
    rows = (_render_cells((escape(role), escape(name), "", ""), labels) for role, name in block.parties)
    return _render_sheet('<caption class="unseen">Signatures</caption>', "", titles, rows, "many sign")


def _render_sheet(caption: str, columns: str, titles: Iterable[str], rows: Iterable[str], kind: str) -> str:
    head = "".join(f'<th scope="col">{title}</th>' for title in titles)
    body = "".join(f"{_BEGIN * row.startswith(_ACROSS)}<tr>{row}</tr>" for row in rows).removeprefix(_BEGIN)
    group = f"<colgroup>{columns}</colgroup>" if columns else ""
    named = f' class="{kind}"' if kind else ""
    table = f"<table{named}>{caption}{group}<thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"
    return f'<div class="sheet">{table}</div>'


def _render_across(cell: Inlines, columns: int) -> str:
    """A cell across the table, which heads the rows below it."""
    return f'{_ACROSS} colspan="{columns}" class="across">{render_line(cell)}</th>'


def _render_cells(cells: Iterable[str], kinds: list[str]) -> str:
    """The cells of a row with what their tags say; the first is its header, unless it is empty."""
    first, *others = zip(cells, kinds, strict=True)
    head = f'<th scope="row"{first[1]}>{first[0]}</th>' if first[0] else "<td></td>"
    return head + "".join(f"<td{kind}>{cell}</td>" for cell, kind in others)
