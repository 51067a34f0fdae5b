"""Converts Markdown to blocks: headings, ordered lists, paragraphs, quotes, bold, italics, and nothing else."""

import re
from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import Any
from xml.etree.ElementTree import Element

import markdown

from specgen.model.block import Article, Block, Emphasis, Inline, Inlines, Item, Note, Paragraph, Part, Strong, Text
from specgen.model.problem import Problem, Refused

TOKEN = re.compile("\ue000(\\d+)\ue001")
_HOLD = "HOLD POINT"
Look = Callable[[int], Any]


@lru_cache(maxsize=1)
def _make_parser() -> markdown.Markdown:
    """A parser without raw HTML, links, images, code or anything else that has no block; one serves all texts."""
    parser = markdown.Markdown(extensions=["sane_lists"], tab_length=3)
    for name in ("html_block",):
        parser.preprocessors.deregister(name)
    for name in (
        "html",
        "entity",
        "autolink",
        "automail",
        "link",
        "reference",
        "image_link",
        "image_reference",
        "short_reference",
        "short_image_ref",
        "backtick",
    ):
        parser.inlinePatterns.deregister(name, strict=False)
    for name in ("code", "setextheader", "reference"):
        parser.parser.blockprocessors.deregister(name, strict=False)
    return parser


def _parse(text: str) -> Any:
    """The root element of a Markdown text, before serialization to HTML."""
    parser = _make_parser()
    parser.parser.state.clear()  # a text that was refused in the middle leaves its lists open
    lines = text.replace("\t", "   ").split("\n")
    for preprocessor in parser.preprocessors:
        lines = preprocessor.run(lines)
    root: Any = parser.parser.parseDocument(lines).getroot()
    for treeprocessor in parser.treeprocessors:
        changed = treeprocessor.run(root)
        root = root if changed is None else changed
    return root


def blocks_of(text: str, inline: Look, block: Look, place: str) -> Iterator[Block]:
    """The blocks of a Markdown text; `inline` and `block` look up its tokens. Raises Refused."""
    runs = iter(range(1_000_000))
    for element in _parse(text):
        if element.tag in ("h1", "h2"):
            heading = Part if element.tag == "h1" else Article
            yield heading(_inlines(element, inline))
        elif element.tag in ("ol", "ul"):
            yield from _items(element, 0, next(runs), inline)
        elif element.tag == "p":
            yield from _paragraph(element, inline, block)
        elif element.tag == "blockquote":
            yield from (_note(_inlines(child, inline)) for child in element)
        else:
            message = f"the template makes a {element.tag!r}, which documents do not have"
            raise Refused(Problem(message, "use headings, numbered lists, paragraphs and quotes", "", place))


def inlines_of(text: str, inline: Look) -> Inlines:
    """The inline content of one line of Markdown."""
    return tuple(part for element in _parse(text) for part in _inlines(element, inline))


def _paragraph(element: Element, inline: Look, block: Look) -> Iterator[Block]:
    """A paragraph, or the block whose token is alone in it."""
    alone = TOKEN.fullmatch((element.text or "").strip()) if not len(element) else None
    whole = block(int(alone[1])) if alone else None
    yield whole if whole is not None else Paragraph(_inlines(element, inline))


def _note(content: Inlines) -> Note:
    """A note; one whose first bold words say so is a hold point."""
    first = content[0] if content else None
    said = first.children[0] if isinstance(first, Strong) and first.children else None
    return Note(content, hold=isinstance(said, Text) and said.text.upper().startswith(_HOLD))


def _items(element: Element, level: int, run: int, inline: Look) -> Iterator[Item]:
    for entry in element:
        heads = [child for child in entry if child.tag not in ("ol", "ul")]
        content = [*_split(entry.text, inline)]
        for child in heads:
            content += _inlines(child, inline) if child.tag == "p" else _child(child, inline)
            content += _split(child.tail, inline)
        yield Item(_trim(content), level, run)
        for child in entry:
            if child.tag in ("ol", "ul"):
                yield from _items(child, level + 1, run, inline)


def _inlines(element: Element, inline: Look) -> Inlines:
    parts = [*_split(element.text, inline)]
    for child in element:
        parts += _child(child, inline)
        parts += _split(child.tail, inline)
    return _trim(parts)


def _child(child: Element, inline: Look) -> list[Inline]:
    wrap: Any = {"strong": Strong, "em": Emphasis}.get(child.tag)
    content = _inlines(child, inline)
    return [wrap(content)] if wrap else list(content)


def _split(text: str | None, inline: Look) -> Iterator[Inline]:
    for number, part in enumerate(TOKEN.split(text or "")):
        if number % 2:
            yield inline(int(part))
        elif part:
            yield Text(re.sub(r"\s+", " ", part))


def _trim(content: list[Inline]) -> Inlines:
    """The content without white space at either end and without empty texts."""
    if content and isinstance(content[0], Text):
        content[0] = Text(content[0].text.lstrip())
    if content and isinstance(content[-1], Text):
        content[-1] = Text(content[-1].text.rstrip())
    return tuple(part for part in content if part != Text(""))
