"""The letterhead as the pages of the PDF show it: their paper, and what stands in head and foot."""

import io
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import Any

from docx import Document as open_docx
from docx.oxml.ns import qn
from docx.parts.document import DocumentPart

from specgen.formats.docx.elements import find_required, read_whole_number
from specgen.formats.docx.letterhead import read_letterhead
from specgen.formats.pdf.face_pictures import FacePictures
from specgen.formats.pdf.face_styles import FaceStyles
from specgen.formats.pdf.face_text import FaceReader
from specgen.formats.pdf.paper import Paper, make_paper

_MARGINS = ("top", "right", "bottom", "left", "header", "footer")


@dataclass(frozen=True, slots=True)
class Face:
    """The page of a letterhead, and its heads and feet as data by kind of page: default, first, even.

    `pictures` are the files that they show by name; `counted` tells whether they count the pages themselves; `told` is
    what the user is told of what cannot be shown.
    """

    paper: Paper
    heads: dict[str, list[Any]] = field(default_factory=dict)
    feet: dict[str, list[Any]] = field(default_factory=dict)
    pictures: dict[str, bytes] = field(default_factory=dict)
    counted: bool = False
    told: tuple[str, ...] = ()

    def describe(self) -> dict[str, Any]:
        """The data of the letterhead."""
        shown = any((*self.heads.values(), *self.feet.values()))
        data = {"paper": self.paper.describe(), "heads": self.heads, "feet": self.feet}
        return data | {"counted": self.counted, "shown": shown}


def read_face(file: Path) -> Face:
    """The face in a Word file; raises Refused where the file cannot be used as a letterhead."""
    return _read_content(read_letterhead(file).content)


@lru_cache(maxsize=4)
def _read_content(content: bytes) -> Face:
    part = open_docx(io.BytesIO(content)).part
    section = part.element.body.sectPr
    size, margins = find_required(section, "w:pgSz"), find_required(section, "w:pgMar")
    sides = read_whole_number(size, "w:w"), read_whole_number(size, "w:h")
    paper = make_paper(sides, {name: read_whole_number(margins, f"w:{name}", "0") for name in _MARGINS})
    pictures, styles = FacePictures(), FaceStyles(part.styles.element)
    heads = _read_running(part, "header", paper, styles, pictures)
    feet = _read_running(part, "footer", paper, styles, pictures)
    counted = any(_counts_pages(blocks) for blocks in (*heads.values(), *feet.values()))
    return Face(paper, heads, feet, pictures.files, counted, tuple(pictures.told))


def _read_running(
    part: DocumentPart, word: str, paper: Paper, styles: FaceStyles, pictures: FacePictures
) -> dict[str, list[Any]]:
    """The headers or the footers of the section, by kind of page."""
    read = {}
    for reference in part.element.body.sectPr.iterchildren(qn(f"w:{word}Reference")):
        running = part.related_parts[reference.get(qn("r:id"))]
        read[reference.get(qn("w:type"), "default")] = FaceReader(running, paper, styles, pictures).read()
    return read


def _counts_pages(data: Any) -> bool:
    """Whether a head or foot says how many pages there are."""
    if isinstance(data, dict):
        return data.get("field") == "pages" or any(map(_counts_pages, data.values()))
    return isinstance(data, list) and any(map(_counts_pages, data))
