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
# More than this in bytes, once unpacked, is no letterhead.
MOST = 100_000_000


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
    """The root element of a part; raises Refused where the part is not XML."""
    parser = etree.XMLParser(resolve_entities=False, no_network=True, remove_blank_text=False)
    try:
        root = etree.fromstring(content, parser)
    except (etree.XMLSyntaxError, ValueError):
        raise refuse(f"the letterhead is damaged in {name}", "open it in a word processor and save it anew") from None
    if root.getroottree().docinfo.doctype:  # forbidden in a package, and a way to make it swell
        raise refuse(f"the letterhead is damaged in {name}", "open it in a word processor and save it anew")
    return root


def serialize_part(root: Element) -> bytes:
    """The bytes of a part, with its XML declaration."""
    return bytes(etree.tostring(root, xml_declaration=True, encoding="UTF-8", standalone=True))


class Package:
    """The parts of a file by name in lower case; links to missing parts are left out."""

    def __init__(self, content: bytes) -> None:
        try:
            with zipfile.ZipFile(io.BytesIO(content)) as zipped:
                infos = [info for info in zipped.infolist() if not info.is_dir()]
                if any(info.flag_bits & 1 for info in infos):
                    raise refuse("the letterhead is locked with a password", "save it without one")
                if sum(info.file_size for info in infos) > MOST:
                    raise refuse("the letterhead is too large", f"at most {MOST // 1_000_000} MB once unpacked")
                self.parts = {_normalize_name(info.filename): zipped.read(info) for info in infos}
        except (zipfile.BadZipFile, NotImplementedError, EOFError, OSError, RuntimeError, ValueError, zlib.error):
            raise refuse("the letterhead is damaged", "open it in a word processor and save it anew") from None

    @cached_property
    def types(self) -> tuple[dict[str, str], dict[str, str]]:
        """Content types by part name, and by file extension."""
        root = parse_part(self.parts.get("[content_types].xml", b""), "[Content_Types].xml")
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
        for entry in parse_part(self.parts[place], place).iter(f"{{{_LINKS}}}Relationship"):
            external = entry.get("TargetMode") == "External"
            target = entry.get("Target", "")
            if not external:
                target = _normalize_name(posixpath.join("/" + folder, unquote(target)))
            if external or target in self.parts:
                links[entry.get("Id", "")] = Link(entry.get("Id", ""), entry.get("Type", ""), target, external)
        return links

    def parse(self, name: str) -> Element:
        """The root element of a part."""
        return parse_part(self.parts[name], name)


def _normalize_name(text: str) -> str:
    """A part name in lower case, without its leading slash."""
    return posixpath.normpath("/" + text.replace("\\", "/")).lstrip("/").lower()


@dataclass
class NewPackage:
    """A package to be written: content and type by part name, relationships by the part they belong to."""

    parts: dict[str, bytes] = field(default_factory=dict)
    types: dict[str, str] = field(default_factory=dict)
    links: dict[str, list[Link]] = field(default_factory=dict)

    def add(self, name: str, type_: str, content: bytes) -> None:
        """Add a part."""
        self.parts[name], self.types[name] = content, type_

    def link(self, source: str, kind: str, target: str) -> str:
        """Link a part, or the package itself, to a part; returns the id of the link."""
        links = self.links.setdefault(source, [])
        type_ = _CORE if kind == "core-properties" else f"{OFFICE}/{kind}"
        links.append(Link(f"rId{len(links) + 1}", type_, target, False))
        return links[-1].id

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
            text = "".join(_render_link(link) for link in links)
            whole = f'{_DECLARED}<Relationships xmlns="{_LINKS}">{text}</Relationships>'
            parts[posixpath.join(folder, "_rels", f"{file}.rels")] = whole.encode()
        return parts


def _render_link(link: Link) -> str:
    target = link.target if link.external else f"/{link.target}"
    mode = ' TargetMode="External"' if link.external else ""
    return f"<Relationship Id={quote(link.id)} Type={quote(link.type)} Target={quote(target)}{mode}/>"
