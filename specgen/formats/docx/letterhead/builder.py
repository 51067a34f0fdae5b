"""Builds a letterhead from a firm's file: page, headers, footers and styles; the rest is left out."""

import dataclasses
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from docx.oxml.ns import qn

from specgen.documents.catalogue import templates_folder
from specgen.formats.docx.elements import Element, find_required, remove_element
from specgen.formats.docx.letterhead.cleaning import TRACKED, clean_page_part, clean_plain_part
from specgen.formats.docx.letterhead.opc import WORD, NewPackage, Package, serialize_part
from specgen.formats.docx.letterhead.opening import open_package
from specgen.formats.docx.letterhead.page import build_page, find_section
from specgen.formats.docx.letterhead.running import carry_part, relink_part
from specgen.formats.docx.letterhead.settings import is_on, merge_settings
from specgen.formats.docx.letterhead.styles import find_tab_stops, merge_styles
from specgen.model.problem import Refused, refuse
from specgen.reading.given_file import FileUse, read_given_file

_USE = FileUse("the letterhead", "give the name of a .docx file", 50_000_000, "make its pictures smaller")
# What a letterhead may hold besides its page, by the kind of its part.
_LEFT = {
    "vbaProject": "macros",
    "wordVbaData": "macros",
    "customXml": "custom XML",
    "oleObject": "embedded objects",
    "package": "embedded objects",
    "control": "form controls",
    "glossaryDocument": "building blocks",
    "mailMergeSource": "mail merge data",
    "extensibility": "menus",
    "origin": "signatures",
    "comments": "comments",
}
_MOST_NAMED = 12
_SHOWN = [qn(f"w:{word}") for word in ("t", "delText", "drawing", "pict", "object", "altChunk", "sym")]
_EMBEDDED = [qn(f"w:embed{face}") for face in ("Regular", "Bold", "Italic", "BoldItalic")]
_THEME = "application/vnd.openxmlformats-officedocument.theme+xml"
_CORE = "application/vnd.openxmlformats-package.core-properties+xml"
_NO_LISTS = f'<w:numbering xmlns:w="{qn("w:p")[1:-2]}"/>'.encode()


@dataclass(frozen=True)
class Letterhead:
    """A Word package to write into, its style ids by our names, their tab stops, and notes for the user."""

    content: bytes
    styles: dict[str, str]
    stops: dict[str, dict[int, str]]
    notes: tuple[str, ...]


def read_letterhead(file: Path) -> Letterhead:
    """The letterhead in a file; raises Refused where the file cannot be used as one."""
    try:
        return _build_letterhead(read_given_file(file, _USE), (templates_folder() / "letterhead.docx").read_bytes())
    except Refused as refused:
        raise Refused(*(dataclasses.replace(problem, file=str(file)) for problem in refused.problems)) from None


@lru_cache(maxsize=4)
def _build_letterhead(content: bytes, own: bytes) -> Letterhead:
    work = _LetterheadBuilder(*open_package(content), *open_package(own))
    section = work.build_section()
    styles, ids = merge_styles(work.parse_theirs("styles", "w:styles"), work.parse_ours("styles"))
    work.put("styles", serialize_part(styles))
    work.put("numbering", _NO_LISTS)
    work.put("settings", serialize_part(work.settings))
    work.put("fontTable", serialize_part(work.clean_fonts()))
    work.add_theme()
    work.finish(section)
    places = {name: find_tab_stops(styles, style_id) for name, style_id in ids.items()}
    return Letterhead(work.to.zip(), ids, places, work.list_notes())


class _LetterheadBuilder:
    """One letterhead under construction: the firm's package, ours, the new one, and what is left out."""

    def __init__(self, package: Package, main: str, own: Package, own_main: str) -> None:
        self.package, self.main, self.own, self.own_main = package, main, own, own_main
        self.to, self.said = NewPackage(), list[str]()
        self.left, self.frozen = dict[str, None](), dict[str, None]()
        root = package.parse(main)
        if root.tag != qn("w:document"):
            raise refuse(f"the letterhead is damaged in {main}", "open it in a word processor and save it anew")
        self.body = root.find(qn("w:body"))
        self.settings = merge_settings(self.parse_theirs("settings", "w:settings"), self.parse_ours("settings"))
        self.to.link("", "officeDocument", "word/document.xml")
        self.look_around()

    def parse_theirs(self, kind: str, tag: str) -> Element | None:
        """The firm's part of a kind with its tracked changes accepted; None where there is none."""
        found = next((link for link in self.package.find_links(self.main).values() if link.kind == kind), None)
        if found is None or found.external:
            return None
        root = self.package.parse(found.target)
        if root.tag != qn(tag):
            raise refuse(f"the letterhead is damaged in {found.target}", "open it in a word processor and save it anew")
        if kind == "theme":
            clean_page_part(root, self.drop)
        else:
            clean_plain_part(root)
        return root

    def parse_ours(self, kind: str) -> Element:
        """Our own part of a kind."""
        return self.own.parse(
            next(link.target for link in self.own.find_links(self.own_main).values() if link.kind == kind)
        )

    def drop(self, word: str) -> None:
        """Remember what is left out."""
        self.left[word] = None

    def freeze(self, field: str) -> None:
        """Remember a field that became words."""
        self.frozen[field] = None

    def look_around(self) -> None:
        """Note what the file holds besides the letterhead."""
        links = [*self.package.find_links().values(), *self.package.find_links(self.main).values()]
        for kind, target in dict.fromkeys((link.kind, link.target) for link in links):
            # Word writes an empty part of comments into files that have none.
            if kind in _LEFT and not (kind == "comments" and b"<w:comment " not in self.read_content(target)):
                self.drop(_LEFT[kind])
        if self.body is not None and any(True for _ in self.body.iter(*_SHOWN)):
            self.drop("text outside header and footer")

    def read_content(self, name: str) -> bytes:
        """The bytes of a part; empty where it lies outside the file."""
        return self.package.parts.get(name, b"")

    def put(self, kind: str, content: bytes, type_: str = "") -> None:
        """Add a part that the document links to."""
        name = f"word/{kind}.xml"
        self.to.add(name, type_ or f"{WORD}.{kind}+xml", content)
        self.to.link("word/document.xml", kind.rpartition("/")[0] or kind, name)

    def clean_fonts(self) -> Element:
        """The font table without the embedded fonts."""
        root = self.parse_theirs("fontTable", "w:fonts")
        if root is None:
            return self.parse_ours("fontTable")
        for font in list(root.iter(*_EMBEDDED)):
            self.drop("embedded fonts")
            remove_element(font)
        return root

    def add_theme(self) -> None:
        """Copy the theme of colors and fonts."""
        root, name = self.parse_theirs("theme", "a:theme"), "theme/theme1"
        if root is not None:
            source = next(link for link in self.package.find_links(self.main).values() if link.kind == "theme").target
            relink_part(root, self.package, source, self.to, f"word/{name}.xml", self.drop)
        self.put(name, serialize_part(root if root is not None else self.parse_ours("theme")), _THEME)

    def build_section(self) -> Element:
        """The page with its headers and footers."""
        theirs, number, count = find_section(self.body)
        if count > 1:
            self.said.append(f"the letterhead has {count} sections; section {number} is used")
        own = find_required(find_required(self.own.parse(self.own_main), "w:body"), "w:sectPr")
        page = build_page(theirs, own, is_on(self.settings, "w:gutterAtTop"))
        first = theirs is not None and is_on(theirs, "w:titlePg")
        kinds = ["default"] + ["first"] * first + ["even"] * is_on(self.settings, "w:evenAndOddHeaders")
        links = self.package.find_links(self.main)
        references = []
        for word, tag in (("header", "w:hdr"), ("footer", "w:ftr")):
            for kind in kinds:
                given = theirs.iterfind(qn(f"w:{word}Reference")) if theirs is not None else ()
                ids = [r.get(qn("r:id")) for r in given if r.get(qn("w:type"), "default") == kind]
                target = links[ids[0]].target if ids and ids[0] in links else ""
                references.append(self.add_reference(page, word, tag, kind, target))
        page[:0] = references
        if first:
            page.append(page.makeelement(qn("w:titlePg")))
        return page

    def add_reference(self, section: Element, word: str, tag: str, kind: str, target: str) -> Element:
        """A header or footer, the firm's or an empty one, and the element that refers to it."""
        name = f"word/{word}-{kind}.xml"
        if target in self.package.parts and self.package.parse(target).tag == qn(tag):
            carry_part(self.package, target, self.to, name, self.drop, self.freeze)
        else:
            self.to.add(name, f"{WORD}.{word}+xml", serialize_part(self.parse_ours(word)))
        id_ = self.to.link("word/document.xml", word, name)
        return section.makeelement(qn(f"w:{word}Reference"), {qn("w:type"): kind, qn("r:id"): id_})

    def finish(self, section: Element) -> None:
        """Write the main part and the properties."""
        root = self.own.parse(self.own_main)
        body = find_required(root, "w:body")
        body[:] = [section]
        self.to.add("word/document.xml", f"{WORD}.document.main+xml", serialize_part(root))
        core = next(link.target for link in self.own.find_links().values() if link.kind == "core-properties")
        self.to.add("docProps/core.xml", _CORE, self.own.parts[core])
        self.to.link("", "core-properties", "docProps/core.xml")

    def list_notes(self) -> tuple[str, ...]:
        """The notes for the user, one sentence each."""
        changes = [f"{TRACKED} of the letterhead are taken as made"] if TRACKED in self.left else []
        listed = _join([word for word in self.left if word != TRACKED])
        return (
            *self.said,
            *changes,
            *([f"{listed} of the letterhead are left out"] if listed else []),
            *([f"fields of the letterhead became the words they showed: {_join(self.frozen)}"] if self.frozen else []),
        )


def _join(words: Iterable[str]) -> str:
    """Words as a list in a sentence; of many, the first ones."""
    first = list(words)
    if len(first) > _MOST_NAMED:
        first = [*first[: _MOST_NAMED - 1], "others"]
    return " and ".join(filter(None, (", ".join(first[:-1]), *first[-1:])))
