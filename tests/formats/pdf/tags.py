"""The tag tree of a PDF as a second library reads it: elements with their words, from the content of the pages."""

import io
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

import pypdf
from pypdf.generic import ContentStream, DictionaryObject, IndirectObject

_PAIR = re.compile(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>")
_RANGE = re.compile(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>")


@dataclass
class Tag:
    """An element of the tag tree: its kind, its alternate text, and words and elements in order."""

    kind: str
    alt: str = ""
    language: str = ""
    parts: list[Any] = field(default_factory=list)

    def walk(self) -> Iterator["Tag"]:
        yield self
        for part in self.parts:
            if isinstance(part, Tag):
                yield from part.walk()

    def text(self, *, alternates: bool = False) -> str:
        """The words below it, of figures those of their captions; with alternates, formulas in plain signs."""
        if self.kind == "Figure":
            return "".join(tag.text(alternates=alternates) for tag in self.find("Caption"))
        if alternates and self.kind == "Formula":
            return self.alt
        return "".join(p.text(alternates=alternates) if isinstance(p, Tag) else p for p in self.parts)

    def find(self, *kinds: str) -> list["Tag"]:
        return [tag for tag in self.walk() if tag.kind in kinds]


class TaggedPdf:
    """A PDF with its tag tree."""

    def __init__(self, content: bytes) -> None:
        self.reader = pypdf.PdfReader(io.BytesIO(content), strict=True)
        self.root = self.reader.root_object
        self._words: dict[int, dict[int, str]] = {}
        self._outside: dict[int, str] = {}
        self._numbers = {page.indirect_reference.idnum: n for n, page in enumerate(self.reader.pages)}
        self.used: set[tuple[int, int]] = set()
        self.tree = self._read_element(self.root["/StructTreeRoot"], None)

    def marked(self) -> set[tuple[int, int]]:
        """Page and number of each piece of content that is marked for the tree."""
        return {(page, number) for page in range(len(self.reader.pages)) for number in self._read_page(page)}

    def unmarked_text(self, page: int) -> str:
        """The words of a page that stand in no mark of any kind."""
        self._read_page(page)
        return self._outside[page]

    def _read_element(self, element: DictionaryObject, page: int | None) -> Tag:
        here = element.get("/Pg")
        if here is not None:
            page = self._numbers[element.raw_get("/Pg").idnum]
        tag = Tag(str(element.get("/S", "/Root"))[1:], str(element.get("/Alt", "")), str(element.get("/Lang", "")))
        kids = element.get("/K", [])
        for kid in kids if isinstance(kids, list) else [kids]:
            kid = kid.get_object() if isinstance(kid, IndirectObject) else kid
            if isinstance(kid, int):
                tag.parts.append(self._take(page, int(kid)))
            elif kid.get("/Type") == "/MCR":
                tag.parts.append(
                    self._take(self._numbers[kid.raw_get("/Pg").idnum] if "/Pg" in kid else page, kid["/MCID"])
                )
            elif kid.get("/Type") != "/OBJR":
                tag.parts.append(self._read_element(kid, page))
        return tag

    def _take(self, page: int | None, number: int) -> str:
        assert page is not None
        self.used.add((page, number))
        return self._read_page(page)[number]

    def _read_page(self, number: int) -> dict[int, str]:
        """The words of each marked piece of a page."""
        if number not in self._words:
            self._words[number], self._outside[number] = _read_marks(self.reader, self.reader.pages[number])
        return self._words[number]


def _read_marks(reader: pypdf.PdfReader, page: Any) -> tuple[dict[int, str], str]:
    fonts = {name: _read_signs(font.get_object()) for name, font in page["/Resources"].get("/Font", {}).items()}
    words: dict[int, str] = {}
    outside, signs = "", {}
    stack: list[tuple[int | None, bool, bool]] = []  # number, whether its words are replaced, whether it is no content
    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        if operator in (b"BDC", b"BMC"):
            given = operands[1] if operator == b"BDC" else {}
            above = stack[-1] if stack else (None, False, False)
            number = given.get("/MCID", above[0])
            if number is not None:
                words.setdefault(int(number), "")
                if "/ActualText" in given:
                    words[int(number)] += str(given["/ActualText"])
            aside = above[2] or operands[0] == "/Artifact"
            stack.append((number, above[1] or "/ActualText" in given, aside))
        elif operator == b"EMC":
            stack.pop()
        elif operator == b"Tf":
            signs = fonts[operands[0]]
        elif operator in (b"Tj", b"TJ"):
            pieces = operands[0] if operator == b"TJ" else operands
            text = "".join(_decode(piece, signs) for piece in pieces if isinstance(piece, (bytes, str)))
            number, replaced, aside = stack[-1] if stack else (None, False, False)
            if number is not None and not replaced:
                words[int(number)] += text
            elif number is None and not aside:
                outside += text
    return words, outside


def _decode(piece: Any, signs: dict[int, str]) -> str:
    raw = piece if isinstance(piece, bytes) else piece.original_bytes
    return "".join(signs[int.from_bytes(raw[at : at + 2], "big")] for at in range(0, len(raw), 2))


def _read_signs(font: DictionaryObject) -> dict[int, str]:
    """The signs of a font by their codes."""
    table = font["/ToUnicode"].get_object().get_data().decode("latin-1")
    signs: dict[int, str] = {}
    for part in re.findall(r"beginbfchar(.*?)endbfchar", table, re.DOTALL):
        signs |= {int(code, 16): _spell(text) for code, text in _PAIR.findall(part)}
    for part in re.findall(r"beginbfrange(.*?)endbfrange", table, re.DOTALL):
        for first, last, text in _RANGE.findall(part):
            for step in range(int(last, 16) - int(first, 16) + 1):
                signs[int(first, 16) + step] = _spell(f"{int(text, 16) + step:0{len(text)}x}")
    return signs


def _spell(text: str) -> str:
    return bytes.fromhex(text).decode("utf-16-be")
