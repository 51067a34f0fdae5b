"""A firm's own frame of the web page: read as HTML, held against lists of what a page may have, and written anew.

What is written is made from the parts that were read, so that no browser can read it otherwise.
"""

import base64
import binascii
import re
from collections.abc import Iterator
from html import escape
from typing import Any

from lxml.etree import LxmlError
from lxml.html import HTMLParser, document_fromstring

from specgen.documents.page_style import check_style
from specgen.documents.template_mistakes import Mistake
from specgen.model.forbidden_characters import find_forbidden
from specgen.model.suggest import suggest

_EMPTY = ("meta", "img", "br", "hr")
_TAGS = (
    *("html", "head", "title", "style", "body", "div", "main", "header", "footer", "section", "article", "aside"),
    *("nav", "address", "figure", "figcaption", "h1", "h2", "h3", "h4", "h5", "h6", "p", "ul", "ol", "li", "dl"),
    *("dt", "dd", "table", "caption", "thead", "tbody", "tfoot", "tr", "th", "td", "blockquote", "span", "a"),
    *("strong", "em", "b", "i", "small", "sub", "sup", "abbr", "bdi", "cite", "q", "time"),
    *_EMPTY,
)
_ANYWHERE = ("class", "id", "lang", "dir", "title", "role", "tabindex", "style", "hidden")
_OF_TAG = {
    "a": ("href",),
    "img": ("src", "alt", "width", "height"),
    "meta": ("charset", "name", "content"),
    "th": ("colspan", "rowspan", "scope"),
    "td": ("colspan", "rowspan"),
    "ol": ("start",),
}
_LINK = re.compile(r"#[\w.-]*|(?:mailto|tel):[\w.@+-]+")
_PICTURE = re.compile(r"data:image/(png|jpeg|gif|webp);base64,([A-Za-z0-9+/=\s]+)")
_BEGINS = {"png": b"\x89PNG\r\n", "jpeg": b"\xff\xd8\xff", "gif": b"GIF8", "webp": b"RIFF"}
_SPOKEN = re.compile("aria-[a-z]+")
_META = ("viewport", "description", "author", "color-scheme", "robots")
_PART = re.compile(r"\$(?:\$|\{?(\w+))")
# Where the large parts may stand.
_HOLDERS = ("body", "div", "main", "header", "footer", "section", "article", "aside")


def read_frame(text: str) -> str:
    """A firm's frame, written anew from what a page may have; raises Mistake with its line for anything else."""
    found = find_forbidden(text)
    if found:
        raise Mistake(found[1], found[2], text.count("\n", 0, found[0]) + 1)
    parser = HTMLParser(encoding="utf-8", no_network=True, remove_comments=True, remove_pis=True)
    try:
        root = document_fromstring(text.encode(), parser=parser)
    except LxmlError:
        raise Mistake("this is no page", "copy the frame anew and change that copy", 1) from None
    tags = [part.tag for part in root.iter()]
    for tag in ("head", "title", "style", "body"):
        if tags.count(tag) != 1:
            raise Mistake(f"the page must have <{tag}> once", "copy the frame anew and change that copy", 1)
    return "".join(["<!DOCTYPE html>\n", *_write(root), "\n"])


def _write(part: Any) -> Iterator[str]:
    """A part of the frame with all that is in it, written anew."""
    if part.tag not in _TAGS:
        raise Mistake(f"<{part.tag}> is not for pages of documents", suggest(str(part.tag), _TAGS), part.sourceline)
    kept = (f' {name}="{escape(_check_attribute(part, name, value))}"' for name, value in part.items())
    yield f"<{part.tag}{''.join(kept)}>"
    if part.tag not in _EMPTY:
        yield _check_words(part, part.text or "")
        for child in part:
            yield from _write(child)
            yield _check_words(part, child.tail or "")
        yield f"</{part.tag}>"


def _check_words(part: Any, words: str) -> str:
    """Words of the frame, written anew; raises Mistake for a part to be filled in that cannot stand in them."""
    if part.tag == "style" and words.strip() != "$style":
        raise Mistake("<style> holds more than $style", "put looks into style.css", part.sourceline)
    for found in _PART.finditer(words):
        if found[1] is None:
            continue  # $$ prints a dollar
        fits = {"style": part.tag == "style", "title": True, "kind": False}.get(found[1], part.tag in _HOLDERS)
        if not fits:
            where = 'write <body class="$kind">' if found[1] == "kind" else "put it where the frame you copied has it"
            raise Mistake(f"${found[1]} cannot stand in <{part.tag}>", where, part.sourceline)
    return escape(words, quote=False)


def _check_attribute(part: Any, name: str, value: str) -> str:
    """The value of an attribute; raises Mistake if the tag may not have it."""
    tag, line, shown = part.tag, part.sourceline, f"{value.strip()[:40]!r}"
    allowed = (*_ANYWHERE, *_OF_TAG.get(tag, ()))
    if name not in allowed and not _SPOKEN.fullmatch(name):
        raise Mistake(f"<{tag}> cannot have {name}", suggest(name, allowed), line)
    if "$" in value and (name, value.strip()) != ("class", "$kind"):
        raise Mistake(f"{shown} cannot stand in {name}", 'only <body class="$kind"> is filled in', line)
    if name == "href" and not _LINK.fullmatch(value):
        raise Mistake(f"{shown} leads out of the page", "a link leads to #content, mailto: or tel:", line)
    if name == "src" and not _is_picture(value):
        hint = "put the picture into the file: data:image/png;base64,..."
        raise Mistake(f"{shown} is no picture within the page", hint, line)
    if tag == "meta" and name in ("charset", "name") and value.casefold() not in ("utf-8", *_META):
        raise Mistake(f"<meta> cannot have {name}={shown}", suggest(value, _META), line)
    if name == "style":
        check_style(value, line)
    return value


def _is_picture(value: str) -> bool:
    """Whether an address holds a picture itself, and one of its own kind."""
    match = _PICTURE.fullmatch(value.strip())
    if match is None:
        return False
    try:
        return base64.b64decode(match[2]).startswith(_BEGINS[match[1]])
    except binascii.Error:
        return False
