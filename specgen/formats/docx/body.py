"""Renders blocks as WordprocessingML text: one pass, style ids resolved once, no object per cell."""

import re
from collections.abc import Iterator
from functools import lru_cache
from itertools import count

from specgen.formats.docx.letterhead import Letterhead
from specgen.formats.docx.symbol import split_symbol
from specgen.formats.equation import omml
from specgen.formats.equation.expression import build_lines
from specgen.formats.xml_text import escape, quote
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
    """The body of one document as XML text, in the styles of its letterhead."""

    def __init__(self, document: Document, letterhead: Letterhead, width: int) -> None:
        self.document, self.stops, self.width = document, letterhead.stops, width
        self.styles = {name: quote(style_id) for name, style_id in letterhead.styles.items()}
        self.ids = count(1)
        self.runs: dict[int, int] = {}
        self.above_table = False

    def render(self) -> Iterator[str]:
        """Paragraphs and tables in order: head, contents, blocks, legend."""
        document = self.document
        yield self.render_paragraph("Document id", self.render_run(document.id))
        yield self.render_paragraph("Title", self.render_run(document.title))
        yield self.render_facts()
        yield self.render_paragraph("Normal", "")
        for number, block in enumerate(document.blocks):
            self.above_table = isinstance(next(iter(document.blocks[number + 1 : number + 2]), None), Table)
            yield self.render_block(number, block)
        if document.legend:
            yield self.render_paragraph("Legend head", self.render_run("Sources of the figures"))
            for mark, text in document.legend:
                yield self.render_paragraph(
                    "Legend", f"{self.render_run(mark)}<w:r><w:tab/></w:r>{self.render_run(text)}"
                )
            yield self.render_paragraph("Legend", self.render_run("Figures without a letter are this project’s own."))

    def render_contents(self) -> Iterator[str]:
        """A contents field with its titles in place, so that it reads right before it is ever updated."""
        heads = [(n, b) for n, b in enumerate(self.document.blocks) if isinstance(b, (Part, Article))]
        entries = [self.render_entry(number, block) for number, block in heads]
        entries[0] = _render_field("begin") + _TOC + _render_field("separate") + entries[0]
        entries[-1] += _render_field("end")
        for (_, block), entry in zip(heads, entries, strict=True):
            style = "toc 1" if isinstance(block, Part) else "toc 2"
            yield self.render_paragraph(style, entry, render_tab_stop(self.stops[style], TITLES, "left"))

    def render_entry(self, number: int, block: Part | Article) -> str:
        """One line of the contents, leading to its heading."""
        inner = f"{self.render_run(block.number)}<w:r><w:tab/></w:r>{self.render_inlines(block.title)}"
        return f'<w:hyperlink w:anchor="_h{number}">{inner}</w:hyperlink>'

    def render_block(self, number: int, block: Block) -> str:
        """One block; an unknown one is a defect."""
        match block:
            case Part() | Article():
                return self.render_heading(number, block)
            case Item():
                return self.render_item(block)
            case Paragraph():
                return self.render_paragraph(
                    "Normal", self.render_inlines(block.content), _KEEP if self.above_table else ""
                )
            case Note():
                return self.render_paragraph("Note", self.render_inlines(block.content))
            case Contents():
                return "".join(self.render_contents())
            case Table():
                caption = (
                    self.render_run(f"{block.number}. ") + self.render_inlines(block.caption) if block.caption else ""
                )
                above = self.render_paragraph("caption", caption) if caption else ""
                return above + self.render_table(block) + self.render_paragraph("Table text", "")
            case Equation():
                return self.render_equation(block)
            case Signature():
                signatures = _build_signature_table(block)
                return self.render_table(signatures, tall=True) + self.render_paragraph("Table text", "")
            case Break():
                return '<w:p><w:r><w:br w:type="page"/></w:r></w:p>'
        raise TypeError(f"no Word text for {block!r}")

    def render_heading(self, number: int, block: Part | Article) -> str:
        """A heading with the bookmark that the contents link to; in a three-part document it is part of the list."""
        style, level = ("heading 1", 0) if isinstance(block, Part) else ("heading 2", 1)
        listed = f'<w:numPr><w:ilvl w:val="{level}"/><w:numId w:val="1"/></w:numPr>' if block.number else ""
        mark = f'<w:bookmarkStart w:id="{number}" w:name="_h{number}"/>'
        title = self.render_inlines(block.title, "<w:caps/>" if block.number else "")
        return self.render_paragraph(style, f'{mark}{title}<w:bookmarkEnd w:id="{number}"/>', listed)

    def render_item(self, item: Item) -> str:
        """A list item, in the single list of a three-part document or in the list of its own run."""
        level, number = (
            (item.level + 2, 1) if self.document.numbering == "three_part" else (item.level, self.find_list(item.run))
        )
        numbering = f'<w:numPr><w:ilvl w:val="{level}"/><w:numId w:val="{number}"/></w:numPr>'
        more = (_KEEP if self.above_table else "") + numbering
        return self.render_paragraph(f"Item level {item.level + 1}", self.render_inlines(item.content), more)

    def find_list(self, run: int) -> int:
        """The numbering instance of a run of items; each run restarts its numbers."""
        return self.runs.setdefault(run, len(self.runs) + 2)

    def render_paragraph(self, style: str, runs: str, more: str = "") -> str:
        """A paragraph of a style."""
        return f"<w:p><w:pPr><w:pStyle w:val={self.styles[style]}/>{more}</w:pPr>{runs}</w:p>"

    def render_equation(self, equation: Equation) -> str:
        """The title of an equation, then its formula and its figures as display equations, kept on one page."""
        tight = '<w:keepLines/><w:spacing w:before="40" w:after="40"/><w:ind w:left="432"/>'
        *first, last = (omml.render_display(line) for line in build_lines(equation))
        head = self.render_paragraph(
            "Normal", self.render_run(equation.title), f'{_KEEP}<w:spacing w:before="160" w:after="0"/>'
        )
        kept = "".join(self.render_paragraph("Normal", line, _KEEP + tight) for line in first)
        return head + kept + self.render_paragraph("Normal", last, tight)

    def render_facts(self) -> str:
        """The head of the document as a table without lines or header row."""
        columns = [self.width * 24 // 100, self.width * 76 // 100]
        rows: Rows = tuple(((Text(label),), (Text(text),)) for label, text in self.document.facts)
        return self.frame_table(
            self.render_rows(rows, columns, "Table text"), columns, "Facts", "Head of the document", "0480"
        )

    def render_table(self, table: Table, tall: bool = False) -> str:
        """A table with fixed columns, a header row that repeats, and rows that do not split."""
        columns = [self.width * share // sum(table.widths) for share in table.widths]
        title = _extract_text(table.caption) or ", ".join(map(_extract_text, table.header))
        head = self.render_rows((table.header,), columns, "Table head", "<w:tblHeader/>")
        rows = self.render_rows(
            table.rows, columns, "Table text", '<w:trHeight w:val="560" w:hRule="atLeast"/>' if tall else ""
        )
        return self.frame_table(head + rows, columns, "Sheet", title, "0420")

    def render_rows(self, rows: Rows, columns: list[int], style: str, properties: str = "") -> str:
        """Table rows; what is the same for every row is written once. A short table stays on one page."""
        begins = [[self.open_cell(column, style, keep) for column in columns] for keep in ("", _KEEP)]
        begin = f"<w:tr><w:trPr><w:cantSplit/>{properties}</w:trPr>"
        kept = len(rows) - 1 if len(rows) <= SHORT else 1
        parts = []
        for number, row in enumerate(rows):
            parts.append(begin)
            for start, content in zip(begins[number < kept], row, strict=True):
                parts += (start, self.render_inlines(content), "</w:p></w:tc>")
            parts.append("</w:tr>")
        return "".join(parts)

    def open_cell(self, column: int, style: str, keep: str) -> str:
        """The start of a cell, up to its text."""
        inner = f"<w:p><w:pPr><w:pStyle w:val={self.styles[style]}/>{keep}</w:pPr>"
        return f'<w:tc><w:tcPr><w:tcW w:w="{column}" w:type="dxa"/></w:tcPr>{inner}'

    def frame_table(self, rows: str, columns: list[int], style: str, title: str, look: str) -> str:
        """Rows inside a table of a style; `title` is read aloud by a screen reader."""
        grid = "".join(f'<w:gridCol w:w="{column}"/>' for column in columns)
        properties = (
            f'<w:tblStyle w:val={self.styles[style]}/><w:tblW w:w="{sum(columns)}" w:type="dxa"/>'
            f'<w:tblLayout w:type="fixed"/><w:tblLook w:val="{look}"/><w:tblCaption w:val={quote(title[:250])}/>'
        )
        return f"<w:tbl><w:tblPr>{properties}</w:tblPr><w:tblGrid>{grid}</w:tblGrid>{rows}</w:tbl>"

    def render_run(self, text: str, properties: str = "") -> str:
        """A run of text; line ends become breaks."""
        content = escape(text)
        if "\n" in content:
            content = content.replace("\n", '</w:t><w:br/><w:t xml:space="preserve">')
        look = f"<w:rPr>{_order_properties(properties)}</w:rPr>" if properties else ""
        return f'<w:r>{look}<w:t xml:space="preserve">{content}</w:t></w:r>'

    def render_inlines(self, content: Inlines, properties: str = "") -> str:
        """Inline content as runs."""
        if len(content) == 1 and type(content[0]) is Text:  # nearly every cell of a long table
            return self.render_run(content[0].text, properties)
        return "".join([self.render_inline(part, properties) for part in content])

    def render_inline(self, part: Inline, properties: str) -> str:
        """One inline; an unknown one is a defect."""
        match part:
            case Text():
                return self.render_run(part.text, properties)
            case Value():
                shade = (
                    properties + '<w:shd w:val="clear" w:color="auto" w:fill="FFF3C4"/>' if part.open else properties
                )
                mark = self.render_run(part.mark, '<w:vertAlign w:val="superscript"/>') if part.mark else ""
                return self.render_run(part.text, shade) + mark
            case Strong():
                return self.render_inlines(part.children, "<w:b/>" + properties)
            case Emphasis():
                return self.render_inlines(part.children, properties + "<w:i/>")
            case Formula():
                runs = (self.render_run(text, properties + look) for text, look in split_symbol(part.text))
                return "".join(runs) or omml.render_inline(part.text)
            case Blank():
                return self.render_control(part.label, _EMPTY + _FORM[part.kind], self.render_run("\u00a0" * 8))
            case CheckBox():
                box = self.render_control(part.label, _BOX, self.render_run("\u2610", _BOX_FONT))
                return box + self.render_run(f"\u00a0{part.label}")
        raise TypeError(f"no Word text for {part!r}")

    def render_control(self, label: str, form: str, shown: str) -> str:
        """A content control: a blank to fill in."""
        names = f'<w:alias w:val={quote(label[:64])}/><w:id w:val="{next(self.ids)}"/>'
        return f"<w:sdt><w:sdtPr>{names}{form}</w:sdtPr><w:sdtContent>{shown}</w:sdtContent></w:sdt>"


def render_tab_stop(stops: dict[int, str], place: int, kind: str) -> str:
    """The tab stops of a paragraph with a single stop; empty where its style already has exactly that one."""
    if stops == {place: kind}:
        return ""
    cleared = "".join(f'<w:tab w:val="clear" w:pos="{other}"/>' for other in sorted(stops) if other != place)
    return f'<w:tabs>{cleared}<w:tab w:val="{kind}" w:pos="{place}"/></w:tabs>'


@lru_cache(maxsize=64)
def _order_properties(properties: str) -> str:
    """Properties of a run, each once and in the order of the schema."""
    known = {found[1]: found[0] for found in _PROPERTY.finditer(properties)}
    return "".join(sorted(known.values(), key=lambda element: _RUN.index(_PROPERTY.sub(r"\1", element))))


def _render_field(kind: str) -> str:
    return f'<w:r><w:fldChar w:fldCharType="{kind}"/></w:r>'


def _build_signature_table(block: Signature) -> Table:
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


def _extract_text(content: Inlines) -> str:
    return "".join(getattr(part, "text", "") for part in content)
