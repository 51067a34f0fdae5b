"""The first page of a Word document: the title block in two columns, and the boxes of a review."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from specgen.formats.docx.tabs import render_tab_stop
from specgen.formats.no_break import keep_words
from specgen.model.block import Box, ReviewBoxes, Strong, Text

if TYPE_CHECKING:
    from specgen.formats.docx.body import Body, Rows

# Sides of the box for a stamp: 3 in, and the margins of its cell; in twentieths of a point.
STAMP, BESIDE = 4320, 2 * 86
# Shares of the page of the labels and texts of the title block.
_SHARES = (14, 38, 12, 36)


def render_title_block(body: Body) -> Iterator[str]:
    """Document and firm, title, and the facts of project and submittal in two columns over a rule."""
    document = body.document
    firm = f"<w:r><w:tab/></w:r>{body.render_run(document.firm)}" if document.firm else ""
    stop = render_tab_stop(body.stops["Document id"], body.width, "right")
    yield body.render_paragraph("Document id", body.render_run(document.id) + firm, stop)
    yield body.render_paragraph("Title", body.render_run(document.title))
    columns = [body.width * share // 100 for share in _SHARES]
    entries = [((Strong((Text(label),)),), (Text(text),)) for label, text in document.facts]
    half = (len(entries) + 1) // 2
    beside = [*entries[half:], *([((), ())] * (2 * half - len(entries)))]
    rows: Rows = tuple((*left, *right) for left, right in zip(entries[:half], beside, strict=True))
    if rows:
        yield body.frame_table(body.render_rows(rows, columns, "Table text"), columns, "Facts", "Title block", "0480")
    yield body.render_gap()


def render_boxes(body: Body, boxes: ReviewBoxes) -> str:
    """The boxes of a review: what is stated on the left, the one for the stamp on the right over their height."""
    right = min(STAMP + BESIDE, body.width * 55 // 100)
    columns = [body.width - right, right]
    height = f'<w:trHeight w:val="{-(-STAMP // len(boxes.stated))}" w:hRule="atLeast"/>'
    rows = []
    for number, box in enumerate(boxes.stated):
        merged = '<w:vMerge w:val="restart"/>' if number == 0 else "<w:vMerge/>"
        stamp = _render_box(body, boxes.stamp) if number == 0 else body.render_paragraph("Table text", "")
        cells = (("", _render_box(body, box)), (merged, stamp))
        row = "".join(
            f'<w:tc><w:tcPr><w:tcW w:w="{column}" w:type="dxa"/>{more}</w:tcPr>{inner}</w:tc>'
            for column, (more, inner) in zip(columns, cells, strict=True)
        )
        rows.append(f"<w:tr><w:trPr><w:cantSplit/>{height}</w:trPr>{row}</w:tr>")
    return body.frame_table("".join(rows), columns, "Boxes", "Review boxes", "0400")


def _render_box(body: Body, box: Box) -> str:
    lines = "".join(body.render_paragraph("Table text", body.render_inlines(line), _LINE) for line in box.lines)
    return body.render_paragraph("Table head", body.render_run(keep_words(box.title)), _LINE) + lines


_LINE = '<w:spacing w:before="40" w:after="60"/>'
