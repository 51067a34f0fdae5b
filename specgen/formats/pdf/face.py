"""The letterhead as the pages of the PDF show it: their paper, and what stands in head and foot."""

import io
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from specgen.formats.pdf.paper import Paper, make_paper


@dataclass(frozen=True, slots=True)
class Face:
    """The page of a letterhead, its head and foot as data, and its pictures by the name the template knows them by."""

    paper: Paper
    head: list[Any] = field(default_factory=list)
    foot: list[Any] = field(default_factory=list)
    pictures: dict[str, bytes] = field(default_factory=dict)

    def describe(self) -> dict[str, Any]:
        """The data of the letterhead."""
        return {"paper": self.paper.describe(), "head": self.head, "foot": self.foot}


def read_face(file: Path) -> Face:
    """The face in a Word file; raises Refused where the file cannot be used as a letterhead."""
    from docx import Document as open_docx
    from docx.oxml.ns import qn

    from specgen.formats.docx.elements import find_required, read_whole_number
    from specgen.formats.docx.letterhead import read_letterhead

    part = open_docx(io.BytesIO(read_letterhead(file).content)).part
    section = part.element.body.sectPr
    size, margins = find_required(section, "w:pgSz"), find_required(section, "w:pgMar")
    sides = read_whole_number(size, "w:w"), read_whole_number(size, "w:h")
    around = {
        name: read_whole_number(margins, f"w:{name}") for name in ("top", "right", "bottom", "left", "header", "footer")
    }
    return Face(make_paper(sides, around))
