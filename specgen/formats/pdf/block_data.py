"""The blocks of a document as plain data for the page template: an object for each, `is` names its kind."""

from collections.abc import Iterator
from itertools import groupby
from typing import Any

from specgen.documents.plain_text import plain_text
from specgen.formats.keeping import is_whole, list_kept
from specgen.formats.pdf.column_data import find_narrow
from specgen.formats.pdf.equation_data import describe_equation
from specgen.formats.pdf.line_data import Line, describe_line, describe_words
from specgen.formats.pdf.list_data import describe_list
from specgen.formats.pdf.paper import Paper, choose_sheet
from specgen.model.block import (
    END_OF_SECTION,
    Article,
    Blank,
    Block,
    Box,
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

Data = dict[str, Any]

# The room for a stamp beside what is stated, with its edges, in millimeters.
_STAMP = 80.4
# Signs of a paragraph that is not torn: a fifth of a page.
_WHOLE = 1500


def describe_blocks(document: Document, paper: Paper) -> list[Data]:
    """The blocks in order; items that follow one another are one list."""
    return list(_BlockDescriber(document, paper).describe())


class _BlockDescriber:
    """Describes the blocks of one document on a paper."""

    def __init__(self, document: Document, paper: Paper) -> None:
        self.document, self.paper = document, paper
        # A heading is one step below the one above it, so that no step is left out.
        self.deep = any(isinstance(block, Part) for block in document.blocks)
        # The blocks that a resubmittal marks as changed.
        self.changed = document.changed

    def describe(self) -> Iterator[Data]:
        """The data of each block, or of each run of items."""
        blocks = self.document.blocks
        kept = list_kept(blocks)
        for listed, run in groupby(range(len(blocks)), key=lambda place: isinstance(blocks[place], Item)):
            if listed:
                places = list(run)
                items = [block for block in (blocks[place] for place in places) if isinstance(block, Item)]
                stay, marked = [kept[place] for place in places], [place in self.changed for place in places]
                yield from describe_list(items, stay, marked)
                continue
            for place in run:
                data = self.describe_block(place, blocks[place])
                # A long table that holds on to what is below it would begin on a page of its own.
                torn = data["is"] == "table" and not data["small"] and "sign" not in data
                data["kept"], data["changed"] = kept[place] and not torn, place in self.changed
                yield data

    def describe_block(self, place: int, block: Block) -> Data:
        """The data of one block; an unknown one is a defect."""
        match block:
            case Part() | Article():
                return self.describe_heading(place, block)
            case Paragraph():
                words = plain_text(block.content)
                kind = "end" if words == END_OF_SECTION else "paragraph"
                return {"is": kind, "words": describe_line(block.content), "whole": len(words) <= _WHOLE}
            case Note():
                return {"is": "hold" if block.hold else "note", "words": describe_line(block.content)}
            case Contents():
                return {"is": "contents", "parts": self.list_parts()}
            case Table():
                return describe_table(block, self.paper.text[0])
            case Equation():
                lines = describe_equation(block)
                return {"is": "equation", "title": describe_words(block.title), "lines": lines, "plain": block.plain}
            case Figure():
                return self.describe_figure(block)
            case Signature():
                return describe_table(_build_signatures(block), self.paper.text[0]) | {"sign": True}
            case ReviewBoxes():
                width = self.paper.text[0] - _STAMP
                stated = [_describe_box(box, width) for box in block.stated]
                return {"is": "boxes", "stated": stated, "stamp": _describe_box(block.stamp, _STAMP)}
            case Break():
                return {"is": "break"}
        raise TypeError(f"no PDF for {block!r}")

    def describe_heading(self, place: int, block: Part | Article) -> Data:
        """A heading with the name that the contents lead to."""
        level = 3 if isinstance(block, Article) and self.deep else 2
        data = {"is": "heading", "level": level, "number": block.number, "words": describe_line(block.title)}
        return data | {"name": self.name_heading(place), "small": isinstance(block, Article)}

    def name_heading(self, place: int) -> str:
        """The name of a heading in the whole set."""
        return f"{self.document.id}.{place}"

    def list_parts(self) -> list[list[Data]]:
        """The headings of the document, each part with its articles."""
        parts: list[list[Data]] = []
        for place, block in enumerate(self.document.blocks):
            if not isinstance(block, (Part, Article)):
                continue
            entry = {"number": block.number, "words": describe_line(block.title), "name": self.name_heading(place)}
            if isinstance(block, Part) or not parts:
                parts.append([entry])
            else:
                parts[-1].append(entry)
        return parts

    def describe_figure(self, figure: Figure) -> Data:
        """A drawing at its own size: within the text, or on a sheet that holds it."""
        caption = describe_line((Text(f"{figure.number}. "), *figure.caption))
        size = {"width": figure.width, "height": figure.height}
        sheet = choose_sheet(figure.width, figure.height, self.paper)
        return {"is": "figure", "svg": figure.svg, "alt": figure.alt, "caption": caption, "sheet": sheet, **size}


def describe_table(table: Table, width: float) -> Data:
    """A table of a width in millimeters: its head, its rows, the shares of its columns.

    `small` is one that is not torn; `narrow` are the columns in which words are parted.
    """
    caption: Line = describe_line((Text(f"{table.number}. "), *table.caption)) if table.caption else ""
    head = [describe_line(cell) for cell in table.header]
    rows = [[describe_line(cell) for cell in row] for row in table.rows]
    return {
        "is": "table",
        "caption": caption,
        "head": head,
        "rows": rows,
        "narrow": find_narrow([head, *(row for row in rows if len(row) == len(head))], table.widths, width),
        "widths": table.widths,
        "figures": sorted(table.figures),
        "small": is_whole(table),
    }


def _describe_box(box: Box, width: float) -> Data:
    lines = [describe_line(line) for line in box.lines]
    return {
        "title": describe_words(box.title),
        "lines": lines,
        "table": describe_table(box.table, width) if box.table else None,
    }


def _build_signatures(block: Signature) -> Table:
    header: tuple[Inlines, ...] = tuple((Text(title),) for title in ("Party", "Name", "Signature", "Date"))
    rows: tuple[tuple[Inlines, ...], ...] = tuple(
        (
            (Text(role),),
            (Text(name) if name else Blank(f"Name of {role.lower()}"),),
            (Blank(f"Signature of {role.lower()}"),),
            (Blank(f"Date of {role.lower()}", "date"),),
        )
        for role, name in block.parties
    )
    return Table(header, rows, (24, 30, 28, 18))
