"""Runs, paragraphs and tables as WordprocessingML text: style ids resolved once, no object per cell."""

import re
from collections.abc import Sequence
from functools import lru_cache
from itertools import count

from specgen.documents.no_break import NO_BREAK, keep_together, keep_words
from specgen.documents.plain_text import plain_text
from specgen.formats.docx.letterhead import Letterhead
from specgen.formats.docx.run_text import render_text
from specgen.formats.docx.symbol import split_symbol
from specgen.formats.equation import omml
from specgen.formats.keeping import list_kept_rows
from specgen.formats.xml_text import quote
from specgen.model.block import (
    Article,
    Blank,
    Block,
    CheckBox,
    Document,
    Emphasis,
    Formula,
    Inline,
    Inlines,
    Letters,
    Link,
    Part,
    Strong,
    Table,
    Text,
    Value,
)

_FORM = {"text": "<w:text/>", "date": '<w:date><w:dateFormat w:val="MMMM d, yyyy"/><w:lid w:val="en-US"/></w:date>'}
KEEP, _RIGHT = "<w:keepNext/>", '<w:jc w:val="right"/>'
# The height of the line behind a table, and of that above a heading, which keeps its own distance; in twentieths of a
# point.
_GAP, _CLOSE = 140, 20
# Least height of a row that is filled in by hand: 0.3 in.
_TALL = '<w:trHeight w:val="432" w:hRule="atLeast"/>'
_SHADE = '<w:shd w:val="clear" w:color="auto" w:fill="F2F2EF"/>'
_FONT = "MS Gothic"
_BOX = (
    f'<w14:checkbox><w14:checked w14:val="0"/><w14:checkedState w14:val="2612" w14:font="{_FONT}"/>'
    f'<w14:uncheckedState w14:val="2610" w14:font="{_FONT}"/></w14:checkbox>'
)
_TICKED = _BOX.replace('w14:checked w14:val="0"', 'w14:checked w14:val="1"')
_BOX_FONT = f'<w:rFonts w:ascii="{_FONT}" w:eastAsia="{_FONT}" w:hAnsi="{_FONT}" w:hint="eastAsia"/>'
# The first word typed takes the place of what a blank shows.
_EMPTY = "<w:showingPlcHdr/>"
# The most signs of a name or tag of a control.
_NAME = 64
# The rule to write on outside a table, so many signs long.
_RULE, _LONG = '<w:u w:val="single"/>', {"text": 52, "date": 28}
# Properties of a run that are set here, in the order of the schema (ECMA-376 part 1, 17.3.2.28).
_RUN = ("rFonts", "b", "i", "caps", "u", "shd", "vertAlign")
_PROPERTY = re.compile(r"<w:(\w+)[^>]*/>")
Rows = tuple[tuple[Inlines, ...], ...]


class Writer:
    """The text of one document in the styles of its letterhead, piece by piece."""

    def __init__(self, document: Document, letterhead: Letterhead, width: int) -> None:
        self.document, self.stops, self.width = document, letterhead.stops, width
        self.styles = {name: quote(style_id) for name, style_id in letterhead.styles.items()}
        self.ids = count(1)
        self.below: Block | None = None  # what follows the block in hand

    def render_paragraph(self, style: str, runs: str, more: str = "") -> str:
        """A paragraph of a style."""
        return f"<w:p><w:pPr><w:pStyle w:val={self.styles[style]}/>{more}</w:pPr>{runs}</w:p>"

    def render_gap(self, *, kept: bool = False) -> str:
        """The narrow line behind a table, which keeps tables apart."""
        height = _CLOSE if self.below is None or isinstance(self.below, (Part, Article)) else _GAP
        line = f'<w:spacing w:before="0" w:after="0" w:line="{height}" w:lineRule="exact"/>'
        return self.render_paragraph("Table text", "", KEEP * kept + line)

    def render_table(self, table: Table, width: int = 0, *, kept: bool = False) -> str:
        """A table with fixed columns, a header row that repeats, and rows that do not split."""
        columns = [(width or self.width) * share // sum(table.widths) for share in table.widths]
        title = plain_text(table.caption) or ", ".join(map(plain_text, table.header))
        head = self.render_rows((table.header,), columns, "Table head", (False,), table.figures, "<w:tblHeader/>")
        rows = self.render_rows(table.rows, columns, "Table text", list_kept_rows(table, kept), table.figures)
        return self.frame_table(head + rows, columns, "Sheet", title, "0420")

    def render_rows(
        self,
        rows: Rows,
        columns: list[int],
        style: str,
        kept: Sequence[bool],
        figures: frozenset[int] = frozenset(),
        more: str = "",
    ) -> str:
        """Table rows; what is the same for every row is written once. `kept` tells which stay with the next."""
        begins = [
            [self.open_cell(column, style, keep + _RIGHT * (n in figures)) for n, column in enumerate(columns)]
            for keep in ("", KEEP)
        ]
        parts: list[str] = []
        across = [self.open_cell(sum(columns), style, keep, len(columns)) for keep in ("", KEEP)]
        for row, keep in zip(rows, kept, strict=True):
            cells: list[str] = []
            heads = len(row) < len(columns)
            for start, content in zip((across[keep],) if heads else begins[keep], row, strict=True):
                cells += (start, self.render_inlines(content, "<w:b/>" * heads), "</w:p></w:tc>")
            written = "".join(cells)
            by_hand = _TALL if _EMPTY in written else ""
            parts += (f"<w:tr><w:trPr><w:cantSplit/>{by_hand}{more}</w:trPr>", written, "</w:tr>")
        return "".join(parts)

    def open_cell(self, column: int, style: str, more: str = "", across: int = 0) -> str:
        """The start of a cell, up to its text; `across` is the number of columns that a shaded one stands across."""
        inner = f"<w:p><w:pPr><w:pStyle w:val={self.styles[style]}/>{more}</w:pPr>"
        spans = f'<w:gridSpan w:val="{across}"/>{_SHADE}' if across else ""
        return f'<w:tc><w:tcPr><w:tcW w:w="{column}" w:type="dxa"/>{spans}</w:tcPr>{inner}'

    def render_layout_row(self, cells: list[str], columns: list[int]) -> str:
        """A row that lays out paragraphs beside each other."""
        inner = "".join(
            f'<w:tc><w:tcPr><w:tcW w:w="{column}" w:type="dxa"/></w:tcPr>{cell}</w:tc>'
            for cell, column in zip(cells, columns, strict=True)
        )
        return f"<w:tr><w:trPr><w:cantSplit/></w:trPr>{inner}</w:tr>"

    def frame_table(self, rows: str, columns: list[int], style: str, title: str, look: str) -> str:
        """Rows inside a table of a style; `title` is read aloud by a screen reader."""
        grid = "".join(f'<w:gridCol w:w="{column}"/>' for column in columns)
        properties = (
            f'<w:tblStyle w:val={self.styles[style]}/><w:tblW w:w="{sum(columns)}" w:type="dxa"/>'
            f'<w:tblLayout w:type="fixed"/><w:tblLook w:val="{look}"/><w:tblCaption w:val={quote(title[:250])}/>'
        )
        return f"<w:tbl><w:tblPr>{properties}</w:tblPr><w:tblGrid>{grid}</w:tblGrid>{rows}</w:tbl>"

    def render_run(self, text: str, properties: str = "") -> str:
        """A run of text."""
        look = f"<w:rPr>{_order_properties(properties)}</w:rPr>" if properties else ""
        return f"<w:r>{look}{render_text(text)}</w:r>"

    def render_inlines(self, content: Inlines, properties: str = "") -> str:
        """Inline content as runs."""
        if len(content) == 1 and type(content[0]) is Text:  # nearly every cell of a long table
            kept = keep_words(content[0].text)
            return self.render_run(kept, properties) if properties else f"<w:r>{render_text(kept)}</w:r>"
        return "".join([self.render_inline(part, properties) for part in keep_together(content)])

    def render_inline(self, part: Inline, properties: str) -> str:
        """One inline; an unknown one is a defect."""
        match part:
            case Text() | Link():
                return self.render_run(part.text, properties)
            case Value():
                shade = (
                    properties + '<w:shd w:val="clear" w:color="auto" w:fill="FFF3C4"/>' if part.open else properties
                )
                return self.render_run(part.text, shade)
            case Letters():
                return self.render_run(part.text.replace(" ", NO_BREAK), '<w:vertAlign w:val="superscript"/>')
            case Strong():
                return self.render_inlines(part.children, "<w:b/>" + properties)
            case Emphasis():
                return self.render_inlines(part.children, properties + "<w:i/>")
            case Formula():
                runs = (self.render_run(text, properties + look) for text, look in split_symbol(part.text))
                return "".join(runs) or omml.render_inline(part.text)
            case Blank():
                return self.render_control(part, _EMPTY + _FORM[part.kind], self.render_run("\u00a0" * 8))
            case CheckBox():
                form, sign = (_TICKED, "\u2612") if part.ticked else (_BOX, "\u2610")
                box = self.render_control(part, form, self.render_run(sign, _BOX_FONT))
                return box + self.render_run(f"\u00a0{keep_words(part.label)}")
        raise TypeError(f"no Word text for {part!r}")

    def render_line(self, content: Inlines) -> str:
        """Inline content outside a table of entries, where a blank is followed by a rule to write on."""
        runs = []
        for part in keep_together(content):
            runs.append(self.render_inline(part, ""))
            if isinstance(part, Blank):
                runs.append(self.render_run("\u00a0" * _LONG[part.kind], _RULE))
        return "".join(runs)

    def render_control(self, part: Blank | CheckBox, form: str, shown: str) -> str:
        """A content control: a blank to fill in, its tag the name that a record reads it by."""
        tag = f"<w:tag w:val={quote(part.name[:_NAME])}/>" if part.name else ""
        names = f'<w:alias w:val={quote(part.label[:_NAME])}/>{tag}<w:id w:val="{next(self.ids)}"/>'
        return f"<w:sdt><w:sdtPr>{names}{form}</w:sdtPr><w:sdtContent>{shown}</w:sdtContent></w:sdt>"


@lru_cache(maxsize=64)
def _order_properties(properties: str) -> str:
    """Properties of a run, each once and in the order of the schema."""
    known = {found[1]: found[0] for found in _PROPERTY.finditer(properties)}
    return "".join(sorted(known.values(), key=lambda element: _RUN.index(_PROPERTY.sub(r"\1", element))))
