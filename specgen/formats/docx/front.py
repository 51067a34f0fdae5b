"""The first page of a Word document: the title block in two columns, and the boxes of a review."""

from collections.abc import Iterator

from specgen.documents.no_break import keep_words
from specgen.formats.docx.tabs import render_tab_stop
from specgen.formats.docx.writer import Rows, Writer
from specgen.model.block import Box, ReviewBoxes, Strong, Text

# Sides of the room for a stamp: 3 in; the margins of its cell, and the line of its title; in twentieths of a point.
STAMP, BESIDE, TITLE = 4320, 2 * 86, 300
_LINE = '<w:spacing w:before="40" w:after="60"/>'
# Shares of the page of the labels and texts of the title block.
_SHARES = (17, 35, 14, 34)


def render_title_block(writer: Writer) -> Iterator[str]:
    """Document and firm, title, and the facts of project and submittal in two columns over a rule."""
    document = writer.document
    firm = f"<w:r><w:tab/></w:r>{writer.render_run(document.firm)}" if document.firm else ""
    stop = render_tab_stop(writer.stops["Document id"], writer.width, "right")
    yield writer.render_paragraph("Document id", writer.render_run(document.id) + firm, stop)
    yield writer.render_paragraph("Title", writer.render_run(document.title))
    columns = [writer.width * share // 100 for share in _SHARES]
    entries = [((Strong((Text(label),)),), (Text(text),)) for label, text in document.facts]
    half = (len(entries) + 1) // 2
    beside = [*entries[half:], *([((), ())] * (2 * half - len(entries)))]
    rows: Rows = tuple((*left, *right) for left, right in zip(entries[:half], beside, strict=True))
    if rows:
        yield writer.frame_table(
            writer.render_rows(rows, columns, "Table text"), columns, "Facts", "Title block", "0480"
        )
    yield writer.render_gap()


def render_boxes(writer: Writer, boxes: ReviewBoxes) -> str:
    """The boxes of a review: what is stated on the left, the one for the stamp on the right over their height."""
    right = min(STAMP + BESIDE, writer.width * 55 // 100)
    columns = [writer.width - right, right]
    height = f'<w:trHeight w:val="{-(-(STAMP + TITLE) // len(boxes.stated))}" w:hRule="atLeast"/>'
    rows = []
    for number, box in enumerate(boxes.stated):
        merged = '<w:vMerge w:val="restart"/>' if number == 0 else "<w:vMerge/>"
        stamp = _render_box(writer, boxes.stamp) if number == 0 else writer.render_paragraph("Table text", "")
        cells = (("", _render_box(writer, box)), (merged, stamp))
        row = "".join(
            f'<w:tc><w:tcPr><w:tcW w:w="{column}" w:type="dxa"/>{more}</w:tcPr>{inner}</w:tc>'
            for column, (more, inner) in zip(columns, cells, strict=True)
        )
        rows.append(f"<w:tr><w:trPr><w:cantSplit/>{height}</w:trPr>{row}</w:tr>")
    return writer.frame_table("".join(rows), columns, "Boxes", "Review boxes", "0400")


def _render_box(writer: Writer, box: Box) -> str:
    lines = "".join(writer.render_paragraph("Table text", writer.render_inlines(line), _LINE) for line in box.lines)
    return writer.render_paragraph("Table head", writer.render_run(keep_words(box.title)), _LINE) + lines
