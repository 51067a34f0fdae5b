"""A head or foot of a letterhead as plain data for the page template: lines, tables and pictures."""

import re
from collections.abc import Iterator
from typing import Any

from docx.opc.part import Part
from docx.oxml.ns import qn

from specgen.formats.docx.elements import Element
from specgen.formats.docx.letterhead import vocabulary as known
from specgen.formats.pdf.face_pictures import FacePictures
from specgen.formats.pdf.face_styles import FaceStyles
from specgen.formats.pdf.paper import Paper

_ALTERNATE, _CHOICE, _FALLBACK = (f"{{{known.MC}}}{word}" for word in ("AlternateContent", "Choice", "Fallback"))
_BOX = qn("w:txbxContent")
_FIELD = re.compile(r"\s*(PAGE|NUMPAGES|SECTIONPAGES)\b", re.IGNORECASE)
_COUNTS = {"PAGE": "page", "NUMPAGES": "pages", "SECTIONPAGES": "pages"}
_SIGNS = {qn("w:br"): "\n", qn("w:cr"): "\n", qn("w:noBreakHyphen"): "-", qn("w:tab"): "\t", qn("w:ptab"): "\t"}
Data = dict[str, Any]


class FaceReader:
    """Reads one header or footer, of which only what may be shown is left."""

    def __init__(self, part: Any, paper: Paper, styles: FaceStyles, pictures: FacePictures) -> None:
        self.part: Part = part
        self.root: Element = part.element
        self.paper, self.styles, self.pictures = paper, styles, pictures
        # Within a field: its instruction while it is read, then whether what it showed is passed over.
        self.instruction: str | None = None
        self.passing = False

    def read(self) -> list[Data]:
        """Its lines and tables in order; empty where nothing shows."""
        blocks = list(self.read_blocks(self.root))
        return blocks if any(map(_shows, blocks)) else []

    def read_blocks(self, parent: Element) -> Iterator[Data]:
        """The lines and tables of an element."""
        for child in parent:
            if child.tag == qn("w:p"):
                yield self.read_paragraph(child)
            elif child.tag == qn("w:tbl"):
                yield self.read_table(child)

    def read_table(self, table: Element) -> Data:
        """A table: widths of its columns, and the blocks of each cell."""
        widths = [float(column.get(qn("w:w"), "1")) for column in table.iter(qn("w:gridCol"))]
        rows = [
            [list(self.read_blocks(cell)) for cell in row.iterchildren(qn("w:tc"))]
            for row in table.iterchildren(qn("w:tr"))
        ]
        most = max(map(len, rows), default=0)
        if len(widths) != most or not all(widths):
            widths = [1.0] * most
        return {"is": "table", "widths": widths, "rows": [row + [[]] * (most - len(row)) for row in rows]}

    def read_paragraph(self, paragraph: Element) -> Data:
        """A line: its look, and its pieces in order."""
        chain = self.styles.list_chain(paragraph)
        pieces = [piece for run in _list_runs(paragraph) for piece in self.read_run(run, chain)]
        return {"is": "line", "pieces": pieces} | self.styles.describe_paragraph(paragraph, chain)

    def read_run(self, run: Element, chain: list[Element]) -> Iterator[Data]:
        """The pieces of a run, or of a field that is written as one element."""
        if run.tag == qn("w:fldSimple"):
            found = _FIELD.match(run.get(qn("w:instr"), ""))
            inner = run.find(qn("w:r"))
            if found is not None:
                look = self.styles.describe_look(inner if inner is not None else run, chain)
                yield {"field": _COUNTS[found[1].upper()], **look}
                return
            for child in run.iterchildren(qn("w:r")):
                yield from self.read_run(child, chain)
            return
        look = self.styles.describe_look(run, chain)
        for child in run:
            yield from self.read_child(child, look)

    def read_child(self, child: Element, look: Data) -> Iterator[Data]:
        """What one element of a run shows."""
        tag = child.tag
        if tag == qn("w:fldChar"):
            yield from self.follow_field(child.get(qn("w:fldCharType"), ""), look)
        elif tag == qn("w:instrText") and self.instruction is not None:
            self.instruction += child.text or ""
        elif self.passing:
            return
        elif tag == qn("w:t"):
            yield {"text": child.text or "", **look}
        elif tag in _SIGNS:
            sign = _SIGNS[str(tag)]
            yield {"tab": True} if sign == "\t" else {"end": True} if sign == "\n" else {"text": sign, **look}
        elif tag == qn("w:sym"):
            yield {"text": "\u2022", **look}
        elif tag == _ALTERNATE:
            chosen = child.find(_CHOICE)
            for inner in chosen if chosen is not None else child.find(_FALLBACK) or ():
                yield from self.read_child(inner, look)
        elif tag in (qn("w:drawing"), qn("w:pict")):
            yield from self.read_drawing(child)

    def follow_field(self, mark: str, look: Data) -> Iterator[Data]:
        """A field that counts pages becomes the count; any other shows the words it has."""
        if mark == "begin":
            self.instruction = ""
        elif mark == "separate" or mark == "end" and self.instruction is not None:
            found = _FIELD.match(self.instruction or "")
            self.instruction = None
            if found is not None:
                yield {"field": _COUNTS[found[1].upper()], **look}
            self.passing = mark == "separate" and found is not None
        else:
            self.passing = False

    def read_drawing(self, drawing: Element) -> Iterator[Data]:
        """The picture of a drawing, or the words in its box."""
        yield from self.pictures.read(drawing, self.part, self.paper)
        for box in drawing.iter(_BOX):
            yield {"box": list(self.read_blocks(box))}


def _list_runs(parent: Element) -> Iterator[Element]:
    """The runs and fields of a paragraph in order, those within links too."""
    for child in parent:
        if child.tag in (qn("w:r"), qn("w:fldSimple")):
            yield child
        elif child.tag in (qn("w:hyperlink"), qn("w:bdo"), qn("w:dir")):
            yield from _list_runs(child)


def _shows(block: Data) -> bool:
    """Whether a block is more than an empty line."""
    if block["is"] == "table":
        return any(_shows(inner) for row in block["rows"] for cell in row for inner in cell)
    return any(
        "tab" not in piece and "end" not in piece and piece.get("text", "-").strip() for piece in block["pieces"]
    )
