"""Blocks to the text of WordprocessingML: one pass, style ids resolved once, no object for each cell."""

from collections.abc import Iterator
from itertools import count
from typing import Any
from xml.sax.saxutils import escape, quoteattr

from ..vocabulary.block import (
    Article,
    Blank,
    Block,
    Break,
    CheckBox,
    Document,
    Emphasis,
    Inline,
    Inlines,
    Item,
    Note,
    Paragraph,
    Part,
    Signature,
    Strong,
    Table,
    Text,
    Value,
)

_NOTES = {"draft": "Draft", "caution": "Caution", "note": "Note"}
_FORM = {"text": "<w:text/>", "date": '<w:date><w:dateFormat w:val="MMMM d, yyyy"/><w:lid w:val="en-US"/></w:date>'}
_BOX = '<w14:checkbox><w14:checked w14:val="0"/></w14:checkbox>'


class Body:
    """The body of one document as XML text; `styles` maps our style names to the letterhead's ids."""

    def __init__(self, document: Document, styles: dict[str, str], width: int) -> None:
        self.document, self.styles, self.width = document, styles, width
        self.ids = count(1)
        self.runs: dict[int, int] = {}

    def xml(self) -> Iterator[str]:
        """Paragraphs and tables in order: head, contents, blocks, legend."""
        document = self.document
        yield self.paragraph("Document id", self.run(document.id))
        yield self.paragraph("Title", self.run(document.title))
        yield self.table(
            Table(((), ()), tuple(((Text(a),), (Text(b),)) for a, b in document.facts), (24, 76)), facts=True
        )
        yield self.paragraph("Normal", "")
        if document.numbering == "three_part":
            yield from self.contents()
        for number, block in enumerate(document.blocks):
            yield self.block(number, block)
        if document.legend:
            yield self.paragraph("Legend head", self.run("Sources of the figures"))
            for mark, text in document.legend:
                yield self.paragraph("Legend", f"{self.run(mark)}<w:r><w:tab/></w:r>{self.run(text)}")
            yield self.paragraph("Legend", self.run("Figures without a letter are this project’s own."))

    def contents(self) -> Iterator[str]:
        """A contents field with its titles in place, so that it reads right before it is ever updated."""
        heads = [(n, b) for n, b in enumerate(self.document.blocks) if isinstance(b, (Part, Article))]
        for place, (number, block) in enumerate(heads):
            begin = (
                _field("begin") + '<w:r><w:instrText xml:space="preserve"> TOC \\o "1-2" \\n \\h </w:instrText></w:r>'
            )
            begin += _field("separate")
            link = f'<w:hyperlink w:anchor="_h{number}">{self.run(block.number)}<w:r><w:tab/></w:r>{self.inlines(block.title)}</w:hyperlink>'
            end = _field("end") if place == len(heads) - 1 else ""
            yield self.paragraph(
                "toc 1" if isinstance(block, Part) else "toc 2", (begin if not place else "") + link + end
            )

    def block(self, number: int, block: Block) -> str:
        """One block; an unknown one is a defect."""
        match block:
            case Part() | Article():
                style = "heading 1" if isinstance(block, Part) else "heading 2"
                mark = f'<w:bookmarkStart w:id="{number}" w:name="_h{number}"/>'
                return self.paragraph(style, f'{mark}{self.inlines(block.title)}<w:bookmarkEnd w:id="{number}"/>')
            case Item():
                return self.item(block)
            case Paragraph():
                return self.paragraph("Normal", self.inlines(block.content))
            case Note():
                return self.paragraph(
                    "Note", self.run(f"{_NOTES[block.kind]}: ", "<w:b/>") + self.inlines(block.content)
                )
            case Table():
                caption = self.run(f"{block.number}. ") + self.inlines(block.caption) if block.caption else ""
                above = self.paragraph("caption", caption) if caption else ""
                return above + self.table(block) + self.paragraph("Table text", "")
            case Signature():
                return self.table(_signed(block), tall=True) + self.paragraph("Table text", "")
            case Break():
                return '<w:p><w:r><w:br w:type="page"/></w:r></w:p>'
        raise TypeError(f"no Word text for {block!r}")

    def item(self, item: Item) -> str:
        """A list item: of the one list of a three-part document, or of the list of its own run."""
        level, number = (
            (item.level + 2, 1) if self.document.numbering == "three_part" else (item.level, self.list_of(item.run))
        )
        numbering = f'<w:numPr><w:ilvl w:val="{level}"/><w:numId w:val="{number}"/></w:numPr>'
        return self.paragraph(f"Item level {item.level + 1}", self.inlines(item.content), numbering)

    def list_of(self, run: int) -> int:
        """The numbering instance of a run of items; each run begins anew."""
        return self.runs.setdefault(run, len(self.runs) + 2)

    def paragraph(self, style: str, runs: str, more: str = "") -> str:
        """A paragraph of a style."""
        return f'<w:p><w:pPr><w:pStyle w:val="{self.styles[style]}"/>{more}</w:pPr>{runs}</w:p>'

    def table(self, table: Table, facts: bool = False, tall: bool = False) -> str:
        """A table with fixed columns, a header row that repeats, and rows that do not split."""
        columns = [self.width * share // sum(table.widths) for share in table.widths]
        grid = "".join(f'<w:gridCol w:w="{column}"/>' for column in columns)
        style = self.styles["Facts" if facts else "Sheet"]
        look = (
            '<w:tblLook w:val="0420" w:firstRow="1" w:noVBand="1"/>'
            if not facts
            else '<w:tblLook w:val="0400" w:noVBand="1"/>'
        )
        title = "Head of the document" if facts else _plain(table.caption) or ", ".join(map(_plain, table.header))
        made = [
            f'<w:tbl><w:tblPr><w:tblStyle w:val="{style}"/><w:tblW w:w="{sum(columns)}" w:type="dxa"/>'
            f'<w:tblLayout w:type="fixed"/>{look}<w:tblCaption w:val={quoteattr(title[:250])}/></w:tblPr><w:tblGrid>{grid}</w:tblGrid>'
        ]
        if not facts:
            made.append(self.row(table.header, columns, "Table head", "<w:cantSplit/><w:tblHeader/>"))
        height = '<w:cantSplit/><w:trHeight w:val="560" w:hRule="atLeast"/>' if tall else "<w:cantSplit/>"
        made += [self.row(row, columns, "Table text", height) for row in table.rows]
        return "".join(made) + "</w:tbl>"

    def row(self, cells: tuple[Inlines, ...], columns: list[int], style: str, properties: str) -> str:
        """One row of a table."""
        begin = f'<w:p><w:pPr><w:pStyle w:val="{self.styles[style]}"/></w:pPr>'
        inner = "".join(
            f'<w:tc><w:tcPr><w:tcW w:w="{column}" w:type="dxa"/></w:tcPr>{begin}{self.inlines(content)}</w:p></w:tc>'
            for content, column in zip(cells, columns, strict=True)
        )
        return f"<w:tr><w:trPr>{properties}</w:trPr>{inner}</w:tr>"

    def run(self, text: str, properties: str = "") -> str:
        """A run of text; line ends become breaks."""
        said = "<w:br/>".join(f'<w:t xml:space="preserve">{escape(line)}</w:t>' for line in text.split("\n"))
        return f"<w:r>{f'<w:rPr>{properties}</w:rPr>' if properties else ''}{said}</w:r>"

    def inlines(self, content: Inlines, properties: str = "") -> str:
        """Inline content as runs."""
        return "".join([self.inline(part, properties) for part in content])

    def inline(self, part: Inline, properties: str) -> str:
        """One inline; an unknown one is a defect."""
        match part:
            case Text():
                return self.run(part.text, properties)
            case Value():
                shade = (
                    properties + '<w:shd w:val="clear" w:color="auto" w:fill="FFF3C4"/>' if part.open else properties
                )
                mark = self.run(part.mark, '<w:vertAlign w:val="superscript"/>') if part.mark else ""
                return self.run(part.text, shade) + mark
            case Strong():
                return self.inlines(part.children, "<w:b/>" + properties)
            case Emphasis():
                return self.inlines(part.children, properties + "<w:i/>")
            case Blank():
                return self.control(part.label, _FORM[part.kind], "\u00a0" * 8)
            case CheckBox():
                return self.control(part.label, _BOX, "\u2610") + self.run(f"\u00a0{part.label}")
        raise TypeError(f"no Word text for {part!r}")

    def control(self, label: str, form: str, shown: str) -> str:
        """A content control: a place to fill in."""
        names = f'<w:alias w:val={quoteattr(label[:64])}/><w:id w:val="{next(self.ids)}"/>'
        return f"<w:sdt><w:sdtPr>{names}{form}</w:sdtPr><w:sdtContent>{self.run(shown)}</w:sdtContent></w:sdt>"


def _field(kind: str) -> str:
    return f'<w:r><w:fldChar w:fldCharType="{kind}"/></w:r>'


def _signed(block: Signature) -> Table:
    header: Any = tuple((Text(title),) for title in ("Party", "Name", "Signature", "Date"))
    rows: Any = tuple(
        (
            (Text(role),),
            (Text(name) if name else Blank(f"Name of {role.lower()}"),),
            (Blank(f"Signature of {role.lower()}"),),
            (Blank(f"Date of {role.lower()}", "date"),),
        )
        for role, name in block.parties
    )
    return Table(header, rows, (24, 30, 28, 18))


def _plain(content: Inlines) -> str:
    return "".join(getattr(part, "text", "") for part in content)
