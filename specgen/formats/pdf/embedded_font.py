"""Our font in a PDF of ours that is not set by typst: for stamps, and for the fields of a form."""

from pathlib import Path
from typing import Any

import pikepdf
from pikepdf import Array, Dictionary, Name, Pdf

from specgen.documents.figures.labels import measure

_FILE = "SheetSans-Regular.ttf"
_CODES = range(32, 256)
_UNITS = 1000  # of the size, as PDF counts widths


def embed_font(document: Pdf, templates: Path) -> Any:
    """The font of our sheets, embedded, for text in the letters of western languages."""
    data = (templates / "fonts" / _FILE).read_bytes()
    described = Dictionary(
        Type=Name.FontDescriptor,
        FontName=Name("/SheetSans"),
        Flags=32,
        FontBBox=Array([-500, -300, 1300, 1000]),
        ItalicAngle=0,
        Ascent=740,
        Descent=-220,
        CapHeight=688,
        StemV=80,
        FontFile2=document.make_indirect(pikepdf.Stream(document, data, Length1=len(data))),
    )
    font = Dictionary(
        Type=Name.Font,
        Subtype=Name.TrueType,
        BaseFont=Name("/SheetSans"),
        Encoding=Name.WinAnsiEncoding,
        FirstChar=_CODES[0],
        LastChar=_CODES[-1],
        Widths=Array([_width_of(code) for code in _CODES]),
        FontDescriptor=document.make_indirect(described),
    )
    return document.make_indirect(font)


def can_write(text: str) -> bool:
    """Whether the font has every letter of a text."""
    try:
        return bool(text.encode("cp1252"))
    except UnicodeEncodeError:
        return False


def encode(text: str) -> bytes:
    """A text as a string in a content stream."""
    return b"<" + text.encode("cp1252", "replace").hex().encode() + b">"


def _width_of(code: int) -> int:
    try:
        return round(measure(bytes([code]).decode("cp1252"), 1.0) * _UNITS)
    except UnicodeDecodeError:
        return 0
