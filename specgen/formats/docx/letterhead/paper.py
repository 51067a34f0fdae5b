"""A firm's letterhead made whole: its page, headers, footers, styles; everything else of it stays behind."""

import dataclasses
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from docx.oxml.ns import qn

from specgen.documents.catalogue import templates_folder
from specgen.formats.docx.elements import Element, find_required, remove_element
from specgen.formats.docx.letterhead.opc import WORD, NewPackage, Package, text_of
from specgen.formats.docx.letterhead.opening import content_of, opened
from specgen.formats.docx.letterhead.page import page_of, section_of
from specgen.formats.docx.letterhead.running import carried, relinked, settled
from specgen.formats.docx.letterhead.settings import is_on, merged_settings
from specgen.formats.docx.letterhead.styles import merged, stops
from specgen.model.problem import Refused, refuse

# What a letterhead may hold beside the paper, by the kind of its part.
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
_SHOWN = [qn(f"w:{word}") for word in ("t", "delText", "drawing", "pict", "object", "altChunk", "sym")]
_EMBEDDED = [qn(f"w:embed{face}") for face in ("Regular", "Bold", "Italic", "BoldItalic")]
_THEME = "application/vnd.openxmlformats-officedocument.theme+xml"
_CORE = "application/vnd.openxmlformats-package.core-properties+xml"
_NO_LISTS = f'<w:numbering xmlns:w="{qn("w:p")[1:-2]}"/>'.encode()


@dataclass(frozen=True)
class Paper:
    """A Word package to write on, the ids of its styles by our names, their tab stops, and what it is told of it."""

    content: bytes
    styles: dict[str, str]
    stops: dict[str, dict[int, str]]
    notes: tuple[str, ...]


def paper(file: Path) -> Paper:
    """The paper of a letterhead; raises Refused where the file cannot be one."""
    try:
        return _made(content_of(file), (templates_folder() / "letterhead.docx").read_bytes())
    except Refused as refused:
        raise Refused(*(dataclasses.replace(problem, file=str(file)) for problem in refused.problems)) from None


@lru_cache(maxsize=4)
def _made(content: bytes, own: bytes) -> Paper:
    work = _Work(*opened(content), *opened(own))
    section = work.section()
    styles, ids = merged(work.theirs("styles", "w:styles"), work.ours("styles"))
    work.put("styles", text_of(styles))
    work.put("numbering", _NO_LISTS)
    work.put("settings", text_of(work.settings))
    work.put("fontTable", text_of(work.fonts()))
    work.theme()
    work.finish(section)
    places = {name: stops(styles, style_id) for name, style_id in ids.items()}
    return Paper(work.to.zipped(), ids, places, work.notes())


class _Work:
    """One letterhead on its way: what is read, what is made, and what is left out."""

    def __init__(self, package: Package, main: str, own: Package, own_main: str) -> None:
        self.package, self.main, self.own, self.own_main = package, main, own, own_main
        self.to, self.left, self.said = NewPackage(), dict[str, None](), list[str]()
        root = package.xml(main)
        if root.tag != qn("w:document"):
            raise refuse(f"the letterhead is damaged in {main}", "open it in a word processor and save it anew")
        self.body = root.find(qn("w:body"))
        self.settings = merged_settings(self.theirs("settings", "w:settings"), self.ours("settings"))
        self.to.link("", "officeDocument", "word/document.xml")
        self.look_around()

    def theirs(self, kind: str, tag: str) -> Element | None:
        """The firm's part of a kind, its tracked changes taken as made; None where it has none."""
        found = next((link for link in self.package.links(self.main).values() if link.kind == kind), None)
        if found is None or found.external:
            return None
        root = self.package.xml(found.target)
        if root.tag != qn(tag):
            raise refuse(f"the letterhead is damaged in {found.target}", "open it in a word processor and save it anew")
        settled(root)
        return root

    def ours(self, kind: str) -> Element:
        """Our own part of a kind."""
        return self.own.xml(next(link.target for link in self.own.links(self.own_main).values() if link.kind == kind))

    def drop(self, word: str) -> None:
        """Remember what is left out."""
        self.left[word] = None

    def look_around(self) -> None:
        """Find what the file holds beside the paper."""
        for link in [*self.package.links().values(), *self.package.links(self.main).values()]:
            # Word writes an empty part of comments into files that have none.
            if link.kind in _LEFT and not (link.kind == "comments" and b"<w:comment " not in self.content(link.target)):
                self.drop(_LEFT[link.kind])
        if self.body is not None and any(True for _ in self.body.iter(*_SHOWN)):
            self.drop("text outside header and footer")

    def content(self, name: str) -> bytes:
        """The bytes of a part, none where it lies outside the file."""
        return self.package.parts.get(name, b"")

    def put(self, kind: str, content: bytes, type_: str = "") -> None:
        """Add a part that the document leads to."""
        name = f"word/{kind}.xml"
        self.to.add(name, type_ or f"{WORD}.{kind}+xml", content)
        self.to.link("word/document.xml", kind.rpartition("/")[0] or kind, name)

    def fonts(self) -> Element:
        """The table of fonts without the fonts themselves."""
        root = self.theirs("fontTable", "w:fonts")
        if root is None:
            return self.ours("fontTable")
        for font in list(root.iter(*_EMBEDDED)):
            self.drop("embedded fonts")
            remove_element(font)
        return root

    def theme(self) -> None:
        """Carry the theme of colors and fonts over."""
        root, name = self.theirs("theme", "a:theme"), "theme/theme1"
        if root is not None:
            source = next(link for link in self.package.links(self.main).values() if link.kind == "theme").target
            relinked(root, self.package, source, self.to, f"word/{name}.xml", self.drop)
        self.put(name, text_of(root if root is not None else self.ours("theme")), _THEME)

    def section(self) -> Element:
        """The page with its headers and footers."""
        theirs, number, count = section_of(self.body)
        if count > 1:
            self.said.append(f"the letterhead has {count} sections; section {number} is used")
        own = find_required(find_required(self.own.xml(self.own_main), "w:body"), "w:sectPr")
        made = page_of(theirs, own, is_on(self.settings, "w:gutterAtTop"))
        first = theirs is not None and is_on(theirs, "w:titlePg")
        kinds = ["default"] + ["first"] * first + ["even"] * is_on(self.settings, "w:evenAndOddHeaders")
        links = self.package.links(self.main)
        references = []
        for word, tag in (("header", "w:hdr"), ("footer", "w:ftr")):
            for kind in kinds:
                given = theirs.iterfind(qn(f"w:{word}Reference")) if theirs is not None else ()
                ids = [r.get(qn("r:id")) for r in given if r.get(qn("w:type"), "default") == kind]
                target = links[ids[0]].target if ids and ids[0] in links else ""
                references.append(self.reference(made, word, tag, kind, target))
        made[:0] = references
        if first:
            made.append(made.makeelement(qn("w:titlePg")))
        return made

    def reference(self, section: Element, word: str, tag: str, kind: str, target: str) -> Element:
        """A header or footer, the firm's or an empty one, and the element that leads to it."""
        name = f"word/{word}-{kind}.xml"
        if target in self.package.parts and self.package.xml(target).tag == qn(tag):
            carried(self.package, target, self.to, name, self.drop)
        else:
            self.to.add(name, f"{WORD}.{word}+xml", text_of(self.ours(word)))
        id_ = self.to.link("word/document.xml", word, name)
        return section.makeelement(qn(f"w:{word}Reference"), {qn("w:type"): kind, qn("r:id"): id_})

    def finish(self, section: Element) -> None:
        """Write the main part and the properties."""
        root = self.own.xml(self.own_main)
        body = find_required(root, "w:body")
        body[:] = [section]
        self.to.add("word/document.xml", f"{WORD}.document.main+xml", text_of(root))
        core = next(link.target for link in self.own.links().values() if link.kind == "core-properties")
        self.to.add("docProps/core.xml", _CORE, self.own.parts[core])
        self.to.link("", "core-properties", "docProps/core.xml")

    def notes(self) -> tuple[str, ...]:
        """What the user is told, a sentence each."""
        changes = [f"{word} of the letterhead are taken as made" for word in self.left if word == "tracked changes"]
        words = [word for word in self.left if word != "tracked changes"]
        listed = " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))
        return (*self.said, *changes, *([f"{listed} of the letterhead are left out"] if listed else []))
