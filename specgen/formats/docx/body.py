"""Blocks to the text of WordprocessingML: one pass, style ids resolved once, no object for each cell."""

import re
from collections.abc import Iterator
from functools import lru_cache
from itertools import count

from specgen.formats.docx.letterhead import Paper
from specgen.formats.equation import omml
from specgen.formats.equation.expression import lines
from specgen.formats.xml_text import escaped, quoted
from specgen.model.block import (
    Article,
    Blank,
    Block,
    Break,
    CheckBox,
    Contents,
    Document,
    Emphasis,
    Equation,
    Formula,
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

_FORM = {"text": "<w:text/>", "date": '<w:date><w:dateFormat w:val="MMMM d, yyyy"/><w:lid w:val="en-US"/></w:date>'}
_TOC = '<w:r><w:instrText xml:space="preserve"> TOC \\o "1-2" \\n \\h </w:instrText></w:r>'
_KEEP = "<w:keepNext/>"
# Where the titles begin in the contents, behind their numbers; in twentieths of a point.
TITLES = 1000
# A table of at most so many rows is not broken over two pages.
SHORT = 9
_FONT = "MS Gothic"
_BOX = (
    f'<w14:checkbox><w14:checked w14:val="0"/><w14:checkedState w14:val="2612" w14:font="{_FONT}"/>'
    f'<w14:uncheckedState w14:val="2610" w14:font="{_FONT}"/></w14:checkbox>'
)
_BOX_FONT = f'<w:rFonts w:ascii="{_FONT}" w:eastAsia="{_FONT}" w:hAnsi="{_FONT}" w:hint="eastAsia"/>'
# The first word typed takes the place of what a blank shows.
_EMPTY = "<w:showingPlcHdr/>"
# Properties of a run that are set here, in the order of the schema (ECMA-376 part 1, 17.3.2.28).
_RUN = ("rFonts", "b", "i", "caps", "shd", "vertAlign")
_PROPERTY = re.compile(r"<w:(\w+)[^>]*/>")

Rows = tuple[tuple[Inlines, ...], ...]


class Body:
    """The body of one document as XML text, in the styles of its paper."""

    def __init__(self, document: Document, paper: Paper, width: int) -> None:
        self.document, self.stops, self.width = document, paper.stops, width
        self.styles = {name: quoted(style_id) for name, style_id in paper.styles.items()}
        self.ids = count(1)
        self.runs: dict[int, int] = {}
        self.above_table = False

    def xml(self) -> Iterator[str]:
        """Paragraphs and tables in order: head, contents, blocks, legend."""
        document = self.document
        yield self.paragraph("Document id", self.run(document.id))
        yield self.paragraph("Title", self.run(document.title))
        yield self.facts()
        yield self.paragraph("Normal", "")
        for number, block in enumerate(document.blocks):
            self.above_table = isinstance(next(iter(document.blocks[number + 1 : number + 2]), None), Table)
            yield self.block(number, block)
        if document.legend:
            yield self.paragraph("Legend head", self.run("Sources of the figures"))
            for mark, text in document.legend:
                yield self.paragraph("Legend", f"{self.run(mark)}<w:r><w:tab/></w:r>{self.run(text)}")
            yield self.paragraph("Legend", self.run("Figures without a letter are this project’s own."))

    def contents(self) -> Iterator[str]:
        """A contents field with its titles in place, so that it reads right before it is ever updated."""
        heads = [(n, b) for n, b in enumerate(self.document.blocks) if isinstance(b, (Part, Article))]
        entries = [self.entry(number, block) for number, block in heads]
        entries[0] = _field("begin") + _TOC + _field("separate") + entries[0]
        entries[-1] += _field("end")
        for (_, block), entry in zip(heads, entries, strict=True):
            style = "toc 1" if isinstance(block, Part) else "toc 2"
            yield self.paragraph(style, entry, aligned(self.stops[style], TITLES, "left"))

    def entry(self, number: int, block: Part | Article) -> str:
        """One line of the contents, leading to its heading."""
        inner = f"{self.run(block.number)}<w:r><w:tab/></w:r>{self.inlines(block.title)}"
        return f'<w:hyperlink w:anchor="_h{number}">{inner}</w:hyperlink>'

    def block(self, number: int, block: Block) -> str:
        """One block; an unknown one is a defect."""
        match block:
            case Part() | Article():
                return self.heading(number, block)
            case Item():
                return self.item(block)
            case Paragraph():
                return self.paragraph("Normal", self.inlines(block.content), _KEEP if self.above_table else "")
            case Note():
                return self.paragraph("Note", self.inlines(block.content))
            case Contents():
                return "".join(self.contents())
            case Table():
                caption = self.run(f"{block.number}. ") + self.inlines(block.caption) if block.caption else ""
                above = self.paragraph("caption", caption) if caption else ""
                return above + self.table(block) + self.paragraph("Table text", "")
            case Equation():
                return self.equation(block)
            case Signature():
                return self.table(_signed(block), tall=True) + self.paragraph("Table text", "")
            case Break():
                return '<w:p><w:r><w:br w:type="page"/></w:r></w:p>'
        raise TypeError(f"no Word text for {block!r}")

    def heading(self, number: int, block: Part | Article) -> str:
        """A heading with the mark that the contents lead to; in a three-part document it is part of the one list."""
        style, level = ("heading 1", 0) if isinstance(block, Part) else ("heading 2", 1)
        listed = f'<w:numPr><w:ilvl w:val="{level}"/><w:numId w:val="1"/></w:numPr>' if block.number else ""
        mark = f'<w:bookmarkStart w:id="{number}" w:name="_h{number}"/>'
        title = self.inlines(block.title, "<w:caps/>" if block.number else "")
        return self.paragraph(style, f'{mark}{title}<w:bookmarkEnd w:id="{number}"/>', listed)

    def item(self, item: Item) -> str:
        """A list item: of the one list of a three-part document, or of the list of its own run."""
        level, number = (
            (item.level + 2, 1) if self.document.numbering == "three_part" else (item.level, self.list_of(item.run))
        )
        numbering = f'<w:numPr><w:ilvl w:val="{level}"/><w:numId w:val="{number}"/></w:numPr>'
        more = (_KEEP if self.above_table else "") + numbering
        return self.paragraph(f"Item level {item.level + 1}", self.inlines(item.content), more)

    def list_of(self, run: int) -> int:
        """The numbering instance of a run of items; each run begins anew."""
        return self.runs.setdefault(run, len(self.runs) + 2)

    def paragraph(self, style: str, runs: str, more: str = "") -> str:
        """A paragraph of a style."""
        return f"<w:p><w:pPr><w:pStyle w:val={self.styles[style]}/>{more}</w:pPr>{runs}</w:p>"

    def equation(self, equation: Equation) -> str:
        """What a line is, then its formula and its figures, each a display equation, all on one page."""
        tight = '<w:keepLines/><w:spacing w:before="40" w:after="40"/><w:ind w:left="432"/>'
        *first, last = (omml.display(line) for line in lines(equation))
        head = self.paragraph("Normal", self.run(equation.title), f'{_KEEP}<w:spacing w:before="160" w:after="0"/>')
        kept = "".join(self.paragraph("Normal", line, _KEEP + tight) for line in first)
        return head + kept + self.paragraph("Normal", last, tight)

    def facts(self) -> str:
        """The head of the document as a table without lines or header row."""
        columns = [self.width * 24 // 100, self.width * 76 // 100]
        rows: Rows = tuple(((Text(label),), (Text(text),)) for label, text in self.document.facts)
        return self.framed(self.rows(rows, columns, "Table text"), columns, "Facts", "Head of the document", "0480")

    def table(self, table: Table, tall: bool = False) -> str:
        """A table with fixed columns, a header row that repeats, and rows that do not split."""
        columns = [self.width * share // sum(table.widths) for share in table.widths]
        title = _plain(table.caption) or ", ".join(map(_plain, table.header))
        head = self.rows((table.header,), columns, "Table head", "<w:tblHeader/>")
        rows = self.rows(
            table.rows, columns, "Table text", '<w:trHeight w:val="560" w:hRule="atLeast"/>' if tall else ""
        )
        return self.framed(head + rows, columns, "Sheet", title, "0420")

    def rows(self, rows: Rows, columns: list[int], style: str, properties: str = "") -> str:
        """Table rows; what is the same for every row is written once. A short table stays on one page."""
        begins = [[self.opening(column, style, keep) for column in columns] for keep in ("", _KEEP)]
        begin = f"<w:tr><w:trPr><w:cantSplit/>{properties}</w:trPr>"
        kept = len(rows) - 1 if len(rows) <= SHORT else 1
        made = []
        for number, row in enumerate(rows):
            made.append(begin)
            for start, content in zip(begins[number < kept], row, strict=True):
                made += (start, self.inlines(content), "</w:p></w:tc>")
            made.append("</w:tr>")
        return "".join(made)

    def opening(self, column: int, style: str, keep: str) -> str:
        """The beginning of a cell, up to its words."""
        inner = f"<w:p><w:pPr><w:pStyle w:val={self.styles[style]}/>{keep}</w:pPr>"
        return f'<w:tc><w:tcPr><w:tcW w:w="{column}" w:type="dxa"/></w:tcPr>{inner}'

    def framed(self, rows: str, columns: list[int], style: str, title: str, look: str) -> str:
        """Rows in a table of a style; `title` is what a screen reader says of it."""
        grid = "".join(f'<w:gridCol w:w="{column}"/>' for column in columns)
        properties = (
            f'<w:tblStyle w:val={self.styles[style]}/><w:tblW w:w="{sum(columns)}" w:type="dxa"/>'
            f'<w:tblLayout w:type="fixed"/><w:tblLook w:val="{look}"/><w:tblCaption w:val={quoted(title[:250])}/>'
        )
        return f"<w:tbl><w:tblPr>{properties}</w:tblPr><w:tblGrid>{grid}</w:tblGrid>{rows}</w:tbl>"

    def run(self, text: str, properties: str = "") -> str:
        """A run of text; line ends become breaks."""
        said = escaped(text)
        if "\n" in said:
            said = said.replace("\n", '</w:t><w:br/><w:t xml:space="preserve">')
        made = f"<w:rPr>{_ordered(properties)}</w:rPr>" if properties else ""
        return f'<w:r>{made}<w:t xml:space="preserve">{said}</w:t></w:r>'

    def inlines(self, content: Inlines, properties: str = "") -> str:
        """Inline content as runs."""
        if len(content) == 1 and type(content[0]) is Text:  # nearly every cell of a long table
            return self.run(content[0].text, properties)
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
            case Formula():
                return omml.inline(part.text)
            case Blank():
                return self.control(part.label, _EMPTY + _FORM[part.kind], self.run("\u00a0" * 8))
            case CheckBox():
                return self.control(part.label, _BOX, self.run("\u2610", _BOX_FONT)) + self.run(f"\u00a0{part.label}")
        raise TypeError(f"no Word text for {part!r}")

    def control(self, label: str, form: str, shown: str) -> str:
        """A content control: a place to fill in."""
        names = f'<w:alias w:val={quoted(label[:64])}/><w:id w:val="{next(self.ids)}"/>'
        return f"<w:sdt><w:sdtPr>{names}{form}</w:sdtPr><w:sdtContent>{shown}</w:sdtContent></w:sdt>"


def aligned(stops: dict[int, str], place: int, kind: str) -> str:
    """The tab stops of a paragraph that has one stop only; nothing where its style has just that."""
    if stops == {place: kind}:
        return ""
    cleared = "".join(f'<w:tab w:val="clear" w:pos="{other}"/>' for other in sorted(stops) if other != place)
    return f'<w:tabs>{cleared}<w:tab w:val="{kind}" w:pos="{place}"/></w:tabs>'


@lru_cache(maxsize=64)
def _ordered(properties: str) -> str:
    """Properties of a run, each once and in the order of the schema."""
    known = {found[1]: found[0] for found in _PROPERTY.finditer(properties)}
    return "".join(sorted(known.values(), key=lambda one: _RUN.index(_PROPERTY.sub(r"\1", one))))


def _field(kind: str) -> str:
    return f'<w:r><w:fldChar w:fldCharType="{kind}"/></w:r>'


def _signed(block: Signature) -> Table:
    header: tuple[Inlines, ...] = tuple((Text(title),) for title in ("Party", "Name", "Signature", "Date"))
    rows: Rows = tuple(
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
