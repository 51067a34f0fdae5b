"""The contents of a Word document: its parts beside each other, each line leading to its heading.

They are no field: they hold no page numbers that could go out of date, and a field does not stand in several cells.
"""

from specgen.formats.docx.tabs import render_tab_stop
from specgen.formats.docx.writer import Writer
from specgen.model.block import Article, Block, Part

# Where the titles begin, behind their numbers; in twentieths of a point.
TITLES = 700
# So many parts stand beside each other.
_BESIDE = 3


def render_contents(writer: Writer) -> str:
    """The numbers and titles of parts and articles."""
    parts = _list_parts(writer, writer.document.blocks)
    beside = min(_BESIDE, len(parts))
    columns = [writer.width // beside] * beside
    rows = []
    for start in range(0, len(parts), beside):
        cells = parts[start : start + beside]
        cells += [writer.render_paragraph("toc 1", "")] * (beside - len(cells))
        rows.append(writer.render_layout_row(cells, columns))
    return writer.frame_table("".join(rows), columns, "Layout", "Contents", "0400") + writer.render_gap()


def _list_parts(writer: Writer, blocks: tuple[Block, ...]) -> list[str]:
    """The lines of each part; a document begins with a part."""
    parts: list[str] = []
    for number, block in enumerate(blocks):
        if isinstance(block, Part):
            parts.append(_render_entry(writer, "toc 1", number, block))
        elif isinstance(block, Article):
            parts[-1] += _render_entry(writer, "toc 2", number, block)
    return parts


def _render_entry(writer: Writer, style: str, number: int, block: Part | Article) -> str:
    inner = f"{writer.render_run(block.number)}<w:r><w:tab/></w:r>{writer.render_inlines(block.title)}"
    link = f'<w:hyperlink w:anchor="_h{number}">{inner}</w:hyperlink>'
    return writer.render_paragraph(style, link, render_tab_stop(writer.stops[style], TITLES, "left"))
