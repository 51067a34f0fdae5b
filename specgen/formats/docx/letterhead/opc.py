"""A package of parts in a zip by the Open Packaging Conventions (ECMA-376 part 2), read leniently."""

import io
import posixpath
import zipfile
import zlib
from dataclasses import dataclass, field
from functools import cached_property
from urllib.parse import unquote

from lxml import etree

from specgen.formats.docx.elements import Element
from specgen.formats.xml_text import quote
from specgen.model.problem import refuse

OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
STRICT = "http://purl.oclc.org/ooxml/officeDocument/relationships"
# Content types of the parts of a Word document begin so.
WORD = "application/vnd.openxmlformats-officedocument.wordprocessingml"
_CORE = "http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties"
_LINKS = "http://schemas.openxmlformats.org/package/2006/relationships"
_TYPES = "http://schemas.openxmlformats.org/package/2006/content-types"
_DECLARED = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
# More than this, once unpacked, is no letterhead: bytes and parts of the whole; bytes of text in a part and in all that
# are read, tags of a part (each takes about 200 bytes of memory), elements within one another, attributes of each.
MOST, MOST_PARTS = 100_000_000, 5_000
MOST_TEXT, MOST_TEXTS, MOST_TAGS = 5_000_000, 20_000_000, 300_000
MOST_DEPTH, MOST_ATTRIBUTES = 200, 100
_DEEP, _CROWDED = f"boolean({'/*' * (MOST_DEPTH + 1)})", f"boolean(//*[count(@*) > {MOST_ATTRIBUTES}])"
_COPY = "copy header and footer into a new document"
_ANEW = "open it in a word processor and save it anew"


@dataclass(frozen=True, slots=True)
class Link:
    """A relationship of a part: its id, its type, and the part or address it points to."""

    id: str
    type: str
    target: str
    external: bool

    @property
    def kind(self) -> str:
        """`image`, `header`, `vbaProject`: the last word of the type."""
        return self.type.rsplit("/", 1)[-1]


def parse_part(content: bytes, name: str) -> Element:
    """The root element of a part, without remarks; raises Refused where the part is not XML, or is too large."""
    _refuse_swollen(content, name)
    parser = etree.XMLParser(resolve_entities=False, no_network=True, remove_comments=True, remove_pis=True)
    try:
        root = etree.fromstring(content, parser)
    except (etree.XMLSyntaxError, ValueError):
        raise refuse(f"the letterhead is damaged in {name}", _ANEW) from None
    if root.xpath(_DEEP):
        raise refuse(f"the letterhead is nested more than {MOST_DEPTH} deep in {name}", _COPY)
    if root.xpath(_CROWDED):
        raise refuse(f"the letterhead has more than {MOST_ATTRIBUTES} attributes on one element in {name}", _COPY)
    if root.getroottree().docinfo.doctype:  # forbidden in a package, and a way to make it swell
        raise refuse(f"the letterhead is damaged in {name}", _ANEW)
    return root


def _refuse_swollen(content: bytes, name: str) -> None:
    """Raise Refused for a part that would take long or fill the memory, before any of it is parsed."""
    if len(content) > MOST_TEXT:
        raise refuse(f"the letterhead has more than {MOST_TEXT // 10**6} MB of text in {name}", _COPY)
    if content.count(b"<") > MOST_TAGS:
        raise refuse(f"the letterhead has more than {MOST_TAGS:,} tags in {name}", _COPY)


def serialize_part(root: Element) -> bytes:
    """The bytes of a part, with its XML declaration."""
    return bytes(etree.tostring(root, xml_declaration=True, encoding="UTF-8", standalone=True))


class Package:
    """The parts of a file by name in lower case; links to missing parts are left out."""

    def __init__(self, content: bytes) -> None:
        self._parsed: dict[str, int] = {}
        if content.count(_ENTRY) > MOST_PARTS:
            raise refuse("the letterhead is too large", f"at most {MOST_PARTS} parts")
        try:
            with zipfile.ZipFile(io.BytesIO(content)) as zipped:
                infos = [info for info in zipped.infolist() if not info.is_dir()]
                if any(info.flag_bits & 1 for info in infos):
                    raise refuse("the letterhead is locked with a password", "save it without one")
                if sum(info.file_size for info in infos) > MOST:
                    raise refuse("the letterhead is too large", f"at most {MOST // 1_000_000} MB once unpacked")
                self.parts = {_normalize_name(info.filename): _unpack(zipped, info) for info in infos}
        except (zipfile.BadZipFile, NotImplementedError, EOFError, OSError, RuntimeError, ValueError, zlib.error):
            raise refuse("the letterhead is damaged", _ANEW) from None

    @cached_property
    def types(self) -> tuple[dict[str, str], dict[str, str]]:
        """Content types by part name, and by file extension."""
        root = self.parse("[content_types].xml")
        named = {
            _normalize_name(e.get("PartName", "")): e.get("ContentType", "") for e in root.iter(f"{{{_TYPES}}}Override")
        }
        ended = {e.get("Extension", "").lower(): e.get("ContentType", "") for e in root.iter(f"{{{_TYPES}}}Default")}
        return named, ended

    def find_type(self, name: str) -> str:
        """The content type of a part; empty where none is declared."""
        named, ended = self.types
        return named.get(name) or ended.get(name.rpartition(".")[2], "")

    def find_links(self, name: str = "") -> dict[str, Link]:
        """The relationships of a part, or of the whole package, by id."""
        folder, file = posixpath.split(name)
        place = posixpath.join(folder, "_rels", f"{file}.rels")
        if place not in self.parts:
            return {}
        links: dict[str, Link] = {}
        for entry in self.parse(place).iter(f"{{{_LINKS}}}Relationship"):
            external = entry.get("TargetMode") == "External"
            target = entry.get("Target", "")
            if not external:
                target = _normalize_name(posixpath.join("/" + folder, unquote(target)))
            if external or target in self.parts:
                links[entry.get("Id", "")] = Link(entry.get("Id", ""), entry.get("Type", ""), target, external)
        return links

    def parse(self, name: str) -> Element:
        """The root element of a part."""
        content = self.parts.get(name, b"")
        self._parsed[name] = len(content)
        if sum(self._parsed.values()) > MOST_TEXTS:
            raise refuse("the letterhead is too large", f"at most {MOST_TEXTS // 1_000_000} MB of text in its parts")
        return parse_part(content, name)


# What each entry of the list at the end of a zip begins with, and how the parts of a package are packed
# (APPNOTE 4.3.12, ECMA-376 part 2, annex B).
_ENTRY, _PACKED = b"PK\x01\x02", {zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED}


def _unpack(zipped: zipfile.ZipFile, info: zipfile.ZipInfo) -> bytes:
    """A part, no longer than it claims to be."""
    if info.compress_type not in _PACKED:
        raise zipfile.BadZipFile("packed in another way")
    with zipped.open(info) as opened:
        return opened.read(info.file_size)


def _normalize_name(text: str) -> str:
    """A part name in lower case, without its leading slash."""
    return posixpath.normpath("/" + text.replace("\\", "/")).lstrip("/").lower()


@dataclass
class NewPackage:
    """A package to be written: content and type by part name, relationships by the part they belong to."""

    parts: dict[str, bytes] = field(default_factory=dict)
    types: dict[str, str] = field(default_factory=dict)
    links: dict[str, dict[tuple[str, str], Link]] = field(default_factory=dict)

    def add(self, name: str, type_: str, content: bytes) -> None:
        """Add a part."""
        self.parts[name], self.types[name] = content, type_

    def link(self, source: str, kind: str, target: str) -> str:
        """Link a part, or the package itself, to a part; returns the id of the link."""
        return self._add_link(source, _CORE if kind == "core-properties" else f"{OFFICE}/{kind}", target, False)

    def link_address(self, source: str, address: str) -> str:
        """Link a part to the address of a web page or a mailbox; returns the id of the link."""
        return self._add_link(source, f"{OFFICE}/hyperlink", address, True)

    def _add_link(self, source: str, type_: str, target: str, external: bool) -> str:
        """The id of a link, the same for the same one."""
        links = self.links.setdefault(source, {})
        return links.setdefault((type_, target), Link(f"rId{len(links) + 1}", type_, target, external)).id

    def zip(self) -> bytes:
        """The package as bytes, the same for the same parts."""
        buffer = io.BytesIO()
        with zipfile.ZipFile(buffer, "w") as out:
            for name, content in (self._render_head() | self.parts).items():
                out.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), content)
        return buffer.getvalue()

    def _render_head(self) -> dict[str, bytes]:
        return {"[Content_Types].xml": self._render_types().encode()} | self._render_links()

    def _render_types(self) -> str:
        rels = "application/vnd.openxmlformats-package.relationships+xml"
        named = "".join(
            f"<Override PartName={quote('/' + name)} ContentType={quote(type_)}/>" for name, type_ in self.types.items()
        )
        return f'{_DECLARED}<Types xmlns="{_TYPES}"><Default Extension="rels" ContentType="{rels}"/>{named}</Types>'

    def _render_links(self) -> dict[str, bytes]:
        parts: dict[str, bytes] = {}
        for source, links in self.links.items():
            folder, file = posixpath.split(source)
            text = "".join(_render_link(link) for link in links.values())
            whole = f'{_DECLARED}<Relationships xmlns="{_LINKS}">{text}</Relationships>'
            parts[posixpath.join(folder, "_rels", f"{file}.rels")] = whole.encode()
        return parts


def _render_link(link: Link) -> str:
    target = link.target if link.external else f"/{link.target}"
    mode = ' TargetMode="External"' if link.external else ""
    return f"<Relationship Id={quote(link.id)} Type={quote(link.type)} Target={quote(target)}{mode}/>"
