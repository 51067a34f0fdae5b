"""A package of parts as the Open Packaging Conventions (ECMA-376 part 2) lay it out in a zip: read leniently."""

import io
import posixpath
import zipfile
import zlib
from dataclasses import dataclass, field
from functools import cached_property
from urllib.parse import unquote

from lxml import etree

from specgen.formats.docx.elements import Element
from specgen.formats.xml_text import quoted
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
    """A relationship of a part: its id, the last word of its type, and the part or address it leads to."""

    id: str
    type: str
    target: str
    external: bool

    @property
    def kind(self) -> str:
        """`image`, `header`, `vbaProject`: the last word of the type."""
        return self.type.rsplit("/", 1)[-1]


def parsed(content: bytes, name: str) -> Element:
    """The root element of a part; raises Refused where it is no XML."""
    parser = etree.XMLParser(resolve_entities=False, no_network=True, remove_blank_text=False)
    try:
        root = etree.fromstring(content, parser)
    except (etree.XMLSyntaxError, ValueError):
        raise refuse(f"the letterhead is damaged in {name}", "open it in a word processor and save it anew") from None
    if root.getroottree().docinfo.doctype:  # forbidden in a package, and a way to make it swell
        raise refuse(f"the letterhead is damaged in {name}", "open it in a word processor and save it anew")
    return root


def text_of(root: Element) -> bytes:
    """A part as it is written."""
    return bytes(etree.tostring(root, xml_declaration=True, encoding="UTF-8", standalone=True))


class Package:
    """The parts of a file by name in lower case; what leads nowhere is left out."""

    def __init__(self, content: bytes) -> None:
        try:
            with zipfile.ZipFile(io.BytesIO(content)) as zipped:
                infos = [info for info in zipped.infolist() if not info.is_dir()]
                if any(info.flag_bits & 1 for info in infos):
                    raise refuse("the letterhead is locked with a password", "save it without one")
                if sum(info.file_size for info in infos) > MOST:
                    raise refuse("the letterhead is too large", f"at most {MOST // 1_000_000} MB once unpacked")
                self.parts = {_name(info.filename): zipped.read(info) for info in infos}
        except (zipfile.BadZipFile, NotImplementedError, EOFError, OSError, RuntimeError, ValueError, zlib.error):
            raise refuse("the letterhead is damaged", "open it in a word processor and save it anew") from None

    @cached_property
    def types(self) -> tuple[dict[str, str], dict[str, str]]:
        """Content types by part name, and by ending."""
        root = parsed(self.parts.get("[content_types].xml", b""), "[Content_Types].xml")
        named = {_name(e.get("PartName", "")): e.get("ContentType", "") for e in root.iter(f"{{{_TYPES}}}Override")}
        ended = {e.get("Extension", "").lower(): e.get("ContentType", "") for e in root.iter(f"{{{_TYPES}}}Default")}
        return named, ended

    def type_of(self, name: str) -> str:
        """The content type of a part, empty where none is told."""
        named, ended = self.types
        return named.get(name) or ended.get(name.rpartition(".")[2], "")

    def links(self, name: str = "") -> dict[str, Link]:
        """The relationships of a part, or of the whole package, by id."""
        folder, file = posixpath.split(name)
        place = posixpath.join(folder, "_rels", f"{file}.rels")
        if place not in self.parts:
            return {}
        made: dict[str, Link] = {}
        for entry in parsed(self.parts[place], place).iter(f"{{{_LINKS}}}Relationship"):
            external = entry.get("TargetMode") == "External"
            target = entry.get("Target", "")
            if not external:
                target = _name(posixpath.join("/" + folder, unquote(target)))
            if external or target in self.parts:
                made[entry.get("Id", "")] = Link(entry.get("Id", ""), entry.get("Type", ""), target, external)
        return made

    def xml(self, name: str) -> Element:
        """The root element of a part."""
        return parsed(self.parts[name], name)


def _name(text: str) -> str:
    """A part name without its slash, in one way of writing."""
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
        """Lead from a part, or from the package, to a part; returns the id."""
        links = self.links.setdefault(source, [])
        type_ = _CORE if kind == "core-properties" else f"{OFFICE}/{kind}"
        links.append(Link(f"rId{len(links) + 1}", type_, target, False))
        return links[-1].id

    def zipped(self) -> bytes:
        """The package as bytes, the same for the same parts."""
        made = io.BytesIO()
        with zipfile.ZipFile(made, "w") as out:
            for name, content in (self._head() | self.parts).items():
                out.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), content)
        return made.getvalue()

    def _head(self) -> dict[str, bytes]:
        return {"[Content_Types].xml": self._types_text().encode()} | self._links_texts()

    def _types_text(self) -> str:
        rels = "application/vnd.openxmlformats-package.relationships+xml"
        named = "".join(
            f"<Override PartName={quoted('/' + name)} ContentType={quoted(type_)}/>"
            for name, type_ in self.types.items()
        )
        return f'{_DECLARED}<Types xmlns="{_TYPES}"><Default Extension="rels" ContentType="{rels}"/>{named}</Types>'

    def _links_texts(self) -> dict[str, bytes]:
        made: dict[str, bytes] = {}
        for source, links in self.links.items():
            folder, file = posixpath.split(source)
            text = "".join(_link_text(link) for link in links)
            whole = f'{_DECLARED}<Relationships xmlns="{_LINKS}">{text}</Relationships>'
            made[posixpath.join(folder, "_rels", f"{file}.rels")] = whole.encode()
        return made


def _link_text(link: Link) -> str:
    target = link.target if link.external else f"/{link.target}"
    mode = ' TargetMode="External"' if link.external else ""
    return f"<Relationship Id={quoted(link.id)} Type={quoted(link.type)} Target={quoted(target)}{mode}/>"
