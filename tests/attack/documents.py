"""Looks for active content in what was built: fields, links, pictures, scripts, anything fetched from elsewhere."""

import re
import zipfile
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import quote

from lxml import etree

from tests.support import ROOT

# Fields that only count pages or repeat a heading, and the start of links that a person follows knowingly.
FIELDS = {"PAGE", "NUMPAGES", "SECTIONPAGES", "STYLEREF"}
OURS = {"TOC"}  # in the body, which no letterhead and no template makes
LINKS = ("http://", "https://", "mailto:")
# First bytes of the pictures that word processors show (from memory).
PICTURES = (
    b"\x89PNG\r\n\x1a\n",
    b"\xff\xd8\xff",
    b"GIF87a",
    b"GIF89a",
    b"BM",
    b"II*\0",
    b"MM\0*",
    b"\x01\0\0\0",
    b"\xd7\xcd\xc6\x9a",
)
_W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_ACTIVE = re.compile(r"activeX|vbaProject|embeddings/|attachedTemplate|oleObject|\.bin$", re.IGNORECASE)
_TAGS = {"script", "iframe", "object", "embed", "form", "base", "link", "frame", "applet", "audio", "video", "portal"}
_SCRIPT = f"<script>{(ROOT / 'templates' / 'review.js').read_text('utf-8')}</script>"
_FETCHING = {
    "src",
    "srcset",
    "href",
    "xlink:href",
    "action",
    "formaction",
    "background",
    "poster",
    "data",
    "ping",
    "srcdoc",
}
_CSS = re.compile(
    r"@import|expression\(|-moz-binding|image-set\(|src\(|url\(\s*+['\"]?+(?!data:image/|#)", re.IGNORECASE
)


def find_active(file: Path) -> list[str]:
    """What of a file acts by itself or fetches something."""
    if file.suffix == ".docx":
        return list(_find_in_word(file))
    if file.suffix == ".html":
        parser = _Page({quote(entry.name).lower() for entry in file.parent.iterdir()})
        # The one script of a package, as it stands in our templates; nothing of the input is in it.
        parser.feed(file.read_text("utf-8").replace(_SCRIPT, "", 1 if file.name == "index.html" else 0))
        parser.close()
        return parser.found
    return []


def _find_in_word(file: Path) -> Iterator[str]:
    with zipfile.ZipFile(file) as parts:
        for name in parts.namelist():
            content = parts.read(name)
            if _ACTIVE.search(name):
                yield f"the part {name}"
            if "/media/" in name and not content.startswith(PICTURES):
                yield f"{name} is no picture"
            if name.endswith((".xml", ".rels")):
                yield from _find_in_part(name, etree.fromstring(content, etree.XMLParser(resolve_entities=False)))


def _find_in_part(name: str, root: etree._Element) -> Iterator[str]:
    # A field may be cut into pieces; joined, the words between two marks are one instruction.
    for field in _read_fields(root):
        kind = (field.split() or ["PAGE"])[0].upper()
        if kind not in (FIELDS | OURS if name == "word/document.xml" else FIELDS):
            yield f"{name}: the field {field[:60]!a}"
    for element in root.iter("{*}Relationship"):
        target = (element.get("Target") or "").strip().lower()
        hyperlink = (element.get("Type") or "").endswith("/hyperlink")
        if element.get("TargetMode") == "External" and not (hyperlink and target.startswith(LINKS)):
            yield f"{name}: the relationship to {target[:60]!a}"
    for element in root.iter():
        for attribute, value in element.attrib.items():
            key = etree.QName(attribute)
            followed = key.localname == "href" and not key.namespace and value.strip().lower().startswith((*LINKS, "#"))
            if key.localname in ("src", "href", "althref") and value.strip() and not followed:
                yield f"{name}: {key.localname}={value[:60]!a}"


def _read_fields(root: etree._Element) -> Iterator[str]:
    for simple in root.iter(f"{_W}fldSimple"):
        yield simple.get(f"{_W}instr") or ""
    words: list[str] = []
    for element in root.iter(f"{_W}instrText", f"{_W}delInstrText", f"{_W}fldChar"):
        if element.tag != f"{_W}fldChar":
            words.append(element.text or "")
        elif words:
            yield "".join(words)
            words = []
    if words:
        yield "".join(words)


class _Page(HTMLParser):
    """Notes tags, attributes and style of a page that act or fetch."""

    def __init__(self, beside: set[str]) -> None:
        super().__init__()
        self.beside = beside  # what a link may lead to
        self.found: list[str] = []
        self._style = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._style = tag == "style"
        given = {key.lower(): (value or "").strip().lower() for key, value in attrs}
        if tag in _TAGS or (tag == "meta" and given.get("http-equiv") == "refresh"):
            self.found.append(f"<{tag}>")
        for key, value in given.items():
            plain = re.sub(r"[\s\0]", "", value)
            inside = (
                plain.startswith("#")
                or (key == "href" and (plain.startswith(LINKS) or plain.partition("#")[0] in self.beside))
                or plain.startswith("data:image/")
            )
            if key.startswith("on") or (key in _FETCHING and plain and not (tag in ("a", "img") and inside)):
                self.found.append(f"<{tag} {key}={value[:60]!a}>")
            if key == "style" and _CSS.search(_unescape(value)):
                self.found.append(f"<{tag} style={value[:60]!a}>")

    def handle_endtag(self, tag: str) -> None:
        self._style = self._style and tag != "style"

    def handle_data(self, data: str) -> None:
        found = _CSS.search(_unescape(data)) if self._style else None
        if found:
            self.found.append(f"style: {found[0]}")


def _unescape(style: str) -> str:
    r"""A style with its escapes resolved, such as `\75 rl(`, and without remarks."""
    plain = re.sub(r"\\([0-9a-fA-F]{1,6})\s?", lambda match: chr(min(int(match[1], 16), 0x10FFFF)), style)
    return re.sub(r"/\*.*?\*/", "", plain, flags=re.DOTALL)
