"""The inlines of a page: words, values, blanks, boxes, links and formulas."""

import re
from html import escape
from urllib.parse import quote

from specgen.documents.no_break import NO_BREAK, NO_BREAK_HYPHEN, keep_together, keep_words
from specgen.formats.equation import mathml
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

_JOINED = re.compile(f"[\\w/.]*(?:{NO_BREAK_HYPHEN}[\\w/.]+)+")


def name_anchor(number: int) -> str:
    """The id of a block by its place in the document."""
    return f"b{number}"


def render_line(content: Inlines) -> str:
    """A line of a page, what belongs together kept on one line."""
    return "".join(map(_render_inline, keep_together(content)))


def render_words(text: str) -> str:
    """Plain words as a line of a page."""
    return _render_text(keep_words(text))


def render_label(text: str) -> str:
    """Words inside of a tag."""
    return escape(keep_words(text).replace(NO_BREAK_HYPHEN, "-"))


def _render_text(text: str) -> str:
    """Words between two tags; what a hyphen joins stays on one line by its look, so that a search finds it."""
    escaped = escape(text)
    if NO_BREAK_HYPHEN not in escaped:
        return escaped
    return _JOINED.sub(lambda found: f'<span class="whole">{found[0].replace(NO_BREAK_HYPHEN, "-")}</span>', escaped)


def _render_link(link: Link) -> str:
    place = "" if link.block is None else f"#{name_anchor(link.block)}"
    return f'<a href="{quote(link.target)}{place}">{render_words(link.text)}</a>'


def _render_inline(part: Inline) -> str:
    match part:
        case Text():
            return _render_text(part.text)
        case Value():
            text = f"<bdi>{_render_text(part.text)}</bdi>"
            return f'<span class="open">{text}</span>' if part.open else text
        case Letters():
            return f"<sup>{escape(part.text.replace(' ', NO_BREAK))}</sup>"
        case Strong():
            return f"<strong>{render_line(part.children)}</strong>"
        case Emphasis():
            return f"<em>{render_line(part.children)}</em>"
        case Link():
            return _render_link(part)
        case Formula():
            return mathml.render_inline(part.text)
        case Blank():
            named = _name_field(part)
            return f'<span class="blank" role="img"{named} aria-label="{escape(part.label)}: to be filled in"></span>'
        case CheckBox():
            first, space, rest = keep_words(part.label).partition(" ")
            look, said = ("box ticked", "ticked") if part.ticked else ("box", "box to tick")
            box = f'<span class="{look}" role="img"{_name_field(part)} aria-label="{said}"></span>'
            return f'<span class="tick">{box}&nbsp;{_render_text(first)}</span>{space}{_render_text(rest)}'
    raise TypeError(f"no HTML for {part!r}")


def _name_field(part: Blank | CheckBox) -> str:
    """The name that a record reads a blank by, as an attribute; nothing where it has none."""
    return f' data-field="{escape(part.name)}"' if part.name else ""
