"""A double line at the left of what changed, in paragraphs and tables; notes have a single one of their own."""

import re

_LINE = '<w:left w:val="double" w:sz="12" w:space="{space}" w:color="auto"/>'
_OF_PARAGRAPH = f"<w:pBdr>{_LINE.format(space=4)}</w:pBdr>"
_OF_TABLE = f"<w:tblBorders>{_LINE.format(space=0)}</w:tblBorders>"
# Tables as a whole, and the paragraphs beside them up to what stands before a border in their properties (ECMA-376
# part 1, 17.3.1.26).
_TABLE = re.compile(r"<w:tbl>.*?</w:tbl>", re.DOTALL)
_PARAGRAPH = re.compile(
    r"<w:p><w:pPr><w:pStyle [^>]*/>(?:<w:(?:keepNext|keepLines|pageBreakBefore)(?: [^>]*)?/>)*"
    r"(?:<w:numPr>.*?</w:numPr>)?"
)
# How the narrow line behind a table begins.
_GAP = '<w:spacing w:before="0" w:after="0" w:line='


def mark_changed(written: str) -> str:
    """The text of a block with the line at its left; the narrow line behind a table has none."""
    parts, at = list[str](), 0
    for table in _TABLE.finditer(written):
        parts += (_mark_paragraphs(written[at : table.start()]), _mark_table(table[0]))
        at = table.end()
    return "".join((*parts, _mark_paragraphs(written[at:])))


def _mark_paragraphs(written: str) -> str:
    return _PARAGRAPH.sub(
        lambda found: found[0] if written.startswith(_GAP, found.end()) else found[0] + _OF_PARAGRAPH, written
    )


def _mark_table(table: str) -> str:
    return table.replace("<w:tblLayout ", f"{_OF_TABLE}<w:tblLayout ", 1)
