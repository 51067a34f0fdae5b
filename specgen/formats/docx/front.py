"""The first page of a Word document: the title block in two columns, and the boxes of a review."""

from collections.abc import Iterator

from specgen.documents.no_break import keep_words
from specgen.formats.docx.tabs import render_tab_stop
from specgen.formats.docx.writer import Rows, Writer
from specgen.model.block import Box, ReviewBoxes, Strong, Text

# Sides of the room for a stamp: 3 in; the margins of its cell, and the line of its title; in twentieths of a point.
STAMP, BESIDE, TITLE = 4320, 2 * 86, 300
# A line above the room for the stamp, with the space around it.
_STAMP_LINE = 320
_LINE = '<w:spacing w:before="40" w:after="60"/>'
# Widths of the labels of the title block, in twentieths of a point, and their greatest share of a narrow page.
_LABELS, _MOST = (1560, 1260), 22
# The share of the page of its left half.
_LEFT = 52


def render_title_block(writer: Writer) -> Iterator[str]:
    """Document and firm, title, and the facts of project and submittal in two columns over a rule."""
    document = writer.document
    firm = f"<w:r><w:tab/></w:r>{writer.render_run(document.firm)}" if document.firm else ""
    stop = render_tab_stop(writer.stops["Document id"], writer.width, "right")
    yield writer.render_paragraph("Document id", writer.render_run(document.id) + firm, stop)
    yield writer.render_paragraph("Title", writer.render_run(document.title))
    columns = _fit_columns(writer.width)
    entries = [((Strong((Text(label),)),), (Text(text),)) for label, text in document.facts]
    half = (len(entries) + 1) // 2
    beside = [*entries[half:], *([((), ())] * (2 * half - len(entries)))]
    rows: Rows = tuple((*left, *right) for left, right in zip(entries[:half], beside, strict=True))
    if rows:
        written = writer.render_rows(rows, columns, "Table text", [True] * len(rows))
        yield writer.frame_table(written, columns, "Facts", "Title block", "0480")
    yield writer.render_gap()


def _fit_columns(width: int) -> list[int]:
    """The columns of the title block: label and text, twice."""
    left = width * _LEFT // 100
    first, second = (min(label, width * _MOST // 100) for label in _LABELS)
    return [first, left - first, second, width - left - second]


def render_boxes(writer: Writer, boxes: ReviewBoxes) -> str:
    """The boxes of a review: what is stated on the left, the one for the stamp on the right over their height."""
    right = min(STAMP + BESIDE, writer.width * 55 // 100)
    columns = [writer.width - right, right]
    room = STAMP + TITLE + _STAMP_LINE * len(boxes.stamp.lines)
    height = f'<w:trHeight w:val="{-(-room // len(boxes.stated))}" w:hRule="atLeast"/>'
    rows = []
    for number, box in enumerate(boxes.stated):
        merged = '<w:vMerge w:val="restart"/>' if number == 0 else "<w:vMerge/>"
        stamp = _render_box(writer, boxes.stamp, right) if number == 0 else writer.render_paragraph("Table text", "")
        cells = (("", _render_box(writer, box, columns[0])), (merged, stamp))
        row = "".join(
            f'<w:tc><w:tcPr><w:tcW w:w="{column}" w:type="dxa"/>{more}</w:tcPr>{inner}</w:tc>'
            for column, (more, inner) in zip(columns, cells, strict=True)
        )
        rows.append(f"<w:tr><w:trPr><w:cantSplit/>{height}</w:trPr>{row}</w:tr>")
    return writer.frame_table("".join(rows), columns, "Boxes", "Review boxes", "0400")


def _render_box(writer: Writer, box: Box, width: int) -> str:
    head = writer.render_paragraph("Table head", writer.render_run(keep_words(box.title)), _LINE)
    lines = "".join(writer.render_paragraph("Table text", writer.render_line(line), _LINE) for line in box.lines)
    table = writer.render_table(box.table, width - BESIDE) + writer.render_gap() if box.table else ""
    return head + lines + table
