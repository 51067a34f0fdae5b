"""Reads a drawn sheet as a reader sees it: strokes by kind, and texts with boxes measured by the font files."""

import re
from dataclasses import dataclass
from functools import cache
from typing import Any

from fontTools.ttLib import TTFont
from lxml import etree

from tests.documents.figures.advances import FONTS

SVG = "{http://www.w3.org/2000/svg}"
# Elements and attributes of SVG 1.1, second edition, that a sheet may have; what else stands on it is looked at anew.
ELEMENTS = {
    "svg": {"version", "width", "height", "viewBox"},
    "title": set(),
    "desc": set(),
    "rect": {"width", "height", "fill"},
    "g": {"fill", "stroke", "font-family", "font-size", "font-weight", "text-anchor"},
    "path": {"id", "d", "fill", "stroke-width", "stroke-dasharray"},
    "text": {"x", "y", "transform"},
}
NUMBER = r"-?[0-9]+(?:\.[0-9]+)?(?:e-[0-9]+)?"
PATH = re.compile(
    rf"(?:M{NUMBER} {NUMBER}(?:L{NUMBER} {NUMBER}|H{NUMBER}V{NUMBER}H{NUMBER})+(?:L{NUMBER} {NUMBER})*Z?)+"
)


@dataclass(frozen=True)
class Text:
    text: str
    left: float
    top: float
    right: float
    bottom: float
    high: float  # of its capitals

    def meets(self, other: "Text") -> bool:
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )


@dataclass(frozen=True)
class Sheet:
    width: float
    height: float
    texts: list[Text]
    strokes: dict[str, str]
    dashes: dict[str, str | None]

    @property
    def words(self) -> list[str]:
        return [text.text for text in self.texts]

    def points(self, kind: str) -> list[tuple[float, float]]:
        """The ends of the straight lines of a kind, save those of the foot of the sheet, 36 mm within the border."""
        ends = re.findall(rf"[ML]({NUMBER}) ({NUMBER})", self.strokes[kind])
        return [(float(x), float(y)) for x, y in ends if float(y) < self.height - 8 - 36]


@cache
def font(bold: bool) -> Any:
    return TTFont(FONTS / f"SheetSans-{'Bold' if bold else 'Regular'}.ttf")


def ink_of(text: str, size: float, bold: bool) -> tuple[float, float, float]:
    """The advance of a text, and how far its glyphs rise above the line and fall below it."""
    glyphs, names = font(bold)["glyf"], font(bold).getBestCmap()
    units = font(bold)["head"].unitsPerEm
    used = [names[ord(char)] for char in text]
    wide = sum(font(bold)["hmtx"].metrics[name][0] for name in used)
    inked = [glyphs[name] for name in used if glyphs[name].numberOfContours]
    rise, fall = max(glyph.yMax for glyph in inked), -min(glyph.yMin for glyph in inked)
    return wide * size / units, rise * size / units, fall * size / units


def read_text(element: Any) -> Text:
    group = element.getparent()
    size, bold = float(group.get("font-size")), group.get("font-weight") == "bold"
    wide, rise, fall = ink_of(element.text, size, bold)
    x, y = float(element.get("x")), float(element.get("y"))
    before = {"start": 0.0, "middle": wide / 2, "end": wide}[group.get("text-anchor")]
    high = 1409 / 2048 * size  # capitals of the font, as its H is drawn
    if element.get("transform"):
        assert element.get("transform") == f"rotate(-90 {element.get('x')} {element.get('y')})"
        return Text(element.text, x - rise, y + before - wide, x + fall, y + before, high)
    return Text(element.text, x - before, y - rise, x - before + wide, y + fall, high)


def read_sheet(svg: str) -> Sheet:
    """A sheet, after its structure was checked."""
    root = etree.fromstring(svg.encode())
    assert root.tag == f"{SVG}svg"
    assert root.get("version") == "1.1"
    for element in root.iter():
        name = element.tag.removeprefix(SVG)
        assert name in ELEMENTS, name
        assert set(element.attrib) <= ELEMENTS[name], (name, element.attrib)
        assert element.get("fill", "none") in ("none", "#fff")
        assert element.get("stroke", "#000") == "#000"
    paths = list(root.iter(f"{SVG}path"))
    assert all(PATH.fullmatch(element.get("d")) for element in paths)
    named = [element for element in paths if element.get("id")]
    width, height = (float(root.get(side).removesuffix("mm")) for side in ("width", "height"))
    assert root.get("viewBox") == f"0 0 {width:g} {height:g}"
    return Sheet(
        width,
        height,
        [read_text(element) for element in root.iter(f"{SVG}text")],
        {element.get("id"): element.get("d") for element in named},
        {element.get("id"): element.get("stroke-dasharray") for element in named},
    )


def overlapping(sheet: Sheet) -> list[tuple[str, str]]:
    """The pairs of texts that overlap, found from left to right."""
    texts = sorted(sheet.texts, key=lambda text: text.left)
    found, open_ = [], list[Text]()
    for text in texts:
        open_ = [other for other in open_ if other.right > text.left]
        found += [(other.text, text.text) for other in open_ if other.meets(text)]
        open_.append(text)
    return found
