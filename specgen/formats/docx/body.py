"""Renders blocks as WordprocessingML text: one pass, style ids resolved once, no object per cell."""

import re
from collections.abc import Iterator

from specgen.documents.no_break import keep_words
from specgen.documents.plain_text import plain_text
from specgen.formats.docx.change_mark import mark_changed
from specgen.formats.docx.contents import render_contents
from specgen.formats.docx.front import render_boxes, render_title_block
from specgen.formats.docx.legend import render_legend
from specgen.formats.docx.letterhead import Letterhead
from specgen.formats.docx.picture import Pictures
from specgen.formats.docx.writer import KEEP, Rows, Writer
from specgen.formats.equation import omml
from specgen.formats.equation.expression import build_lines
from specgen.formats.keeping import list_kept
from specgen.model.block import (
    END_OF_SECTION,
    Article,
    Blank,
    Block,
    Break,
    Contents,
    Document,
    Equation,
    Figure,
    Inlines,
    Item,
    Note,
    Paragraph,
    Part,
    ReviewBoxes,
    Signature,
    Table,
    Text,
)

_PARAGRAPH = re.compile(r"<w:p><w:pPr><w:pStyle [^>]*/>(?:<w:keepNext/>)?(?:<w:keepLines/>)?")
_NEW_PAGE = "<w:pageBreakBefore/>"
# A title stands apart from the items of the one above it.
_APART = '<w:spacing w:before="80"/>'
# A caption below its figure ends there, where one above its table stays with it.
_LET_GO, _CENTERED = '<w:keepNext w:val="0"/>', '<w:jc w:val="center"/>'


class Body(Writer):
    """The body of one document as XML text, in the styles of its letterhead."""

    def __init__(self, document: Document, letterhead: Letterhead, width: int, pictures: Pictures) -> None:
        super().__init__(document, letterhead, width)
        self.pictures = pictures
        self.runs: dict[int, int] = {}

    def render(self) -> Iterator[str]:
        """Paragraphs and tables in order: head, contents, blocks, legend."""
        document = self.document
        yield from render_title_block(self)
        for number, (block, kept) in enumerate(zip(document.blocks, list_kept(document.blocks), strict=True)):
            self.below = next(iter(document.blocks[number + 1 : number + 2]), None)
            written = self.render_block(number, block, kept)
            if number in document.changed:
                written = mark_changed(written)
            begins = number > 0 and isinstance(document.blocks[number - 1], Break)
            yield self.begin_page(written) if begins else written
        if document.legend:
            yield render_legend(self)

    def begin_page(self, written: str) -> str:
        """A block at the head of a new page; a table needs a narrow line before it."""
        found = _PARAGRAPH.match(written)
        if found is None:
            return self.begin_page(self.render_gap()) + written
        return f"{found[0]}{_NEW_PAGE}{written[found.end() :]}"

    def close_table(self, *, kept: bool = False) -> str:
        """The line behind a table; none before a new page, as below a full page it would make its own.

        Nor is there one before a heading, which some word processors part from its text behind so narrow a line.
        """
        return "" if isinstance(self.below, (Break, Part, Article)) else self.render_gap(kept=kept)

    def render_block(self, number: int, block: Block, kept: bool) -> str:
        """One block, and whether it stays with the one below it; an unknown one is a defect."""
        keep = KEEP * kept
        match block:
            case Part() | Article():
                return self.render_heading(number, block)
            case Item():
                return self.render_item(number, block, keep)
            case Paragraph():
                ends = plain_text(block.content) == END_OF_SECTION
                style = "End of section" if ends else "Normal"
                return self.render_paragraph(style, self.render_line(block.content), keep)
            case Note():
                style = "Hold point" if block.hold else "Note"
                return self.render_paragraph(style, self.render_inlines(block.content), keep)
            case Contents():
                return render_contents(self)
            case Table():
                caption = (
                    self.render_run(f"{block.number}. ") + self.render_inlines(block.caption) if block.caption else ""
                )
                above = self.render_paragraph("caption", caption) if caption else ""
                return above + self.render_table(block, kept=kept) + self.close_table(kept=kept)
            case Equation():
                return self.render_equation(block, keep)
            case Figure():
                return self.render_figure(block)
            case Signature():
                signatures = _build_signature_table(block)
                return self.render_table(signatures) + self.close_table()
            case ReviewBoxes():
                return render_boxes(self, block) + self.close_table()
            case Break():
                return ""  # the block below begins the page
        raise TypeError(f"no Word text for {block!r}")

    def render_figure(self, figure: Figure) -> str:
        """The picture with its caption below it, on one page; a ruled box with what it shows where there is none."""
        shown = self.pictures.render(figure)
        title: Inlines = (Text(f"{figure.number}. "), *figure.caption)
        if not shown:
            return self.render_table(Table((title,), (((Text(figure.alt),),),), (100,))) + self.render_gap()
        picture = self.render_paragraph("Normal", shown, KEEP + _CENTERED)
        return picture + self.render_paragraph("caption", self.render_inlines(title), _LET_GO + _CENTERED)

    def render_heading(self, number: int, block: Part | Article) -> str:
        """A heading with the bookmark that the contents link to; in a three-part document it is part of the list."""
        style, level = ("heading 1", 0) if isinstance(block, Part) else ("heading 2", 1)
        listed = f'<w:numPr><w:ilvl w:val="{level}"/><w:numId w:val="1"/></w:numPr>' if block.number else ""
        mark = f'<w:bookmarkStart w:id="{number}" w:name="_h{number}"/>'
        title = self.render_inlines(block.title, "<w:caps/>" if block.number else "")
        return self.render_paragraph(style, f'{mark}{title}<w:bookmarkEnd w:id="{number}"/>', listed)

    def render_item(self, place: int, item: Item, keep: str) -> str:
        """A list item, in the single list of a three-part document or in the list of its own run."""
        begins = isinstance(self.below, Item) and self.below.level > item.level
        follows = place > 0 and isinstance(self.document.blocks[place - 1], Item)
        level, number = (
            (item.level + 2, 1) if self.document.numbering == "three_part" else (item.level, self.find_list(item.run))
        )
        numbering = f'<w:numPr><w:ilvl w:val="{level}"/><w:numId w:val="{number}"/></w:numPr>'
        return self.render_paragraph(
            f"Item level {item.level + 1}",
            self.render_line(item.content),
            keep + numbering + _APART * (begins and follows),
        )

    def find_list(self, run: int) -> int:
        """The numbering instance of a run of items; each run restarts its numbers."""
        return self.runs.setdefault(run, len(self.runs) + 2)

    def render_equation(self, equation: Equation, keep: str) -> str:
        """The title of an equation, then its formula and its figures as display equations, kept on one page."""
        tight = '<w:keepLines/><w:spacing w:before="20" w:after="20"/><w:ind w:left="432"/>'
        *first, last = (omml.render_display(line) for line in build_lines(equation))
        head = self.render_paragraph(
            "Normal", self.render_run(keep_words(equation.title)), f'{KEEP}<w:spacing w:before="80" w:after="0"/>'
        )
        kept = "".join(self.render_paragraph("Normal", line, KEEP + tight) for line in first)
        return head + kept + self.render_paragraph("Normal", last, keep + tight)


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
