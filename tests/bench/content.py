"""The measured content, and the least that any writer of it can do.

`python -m tests.bench.content TIMES FOLDER` writes it as DOCX and HTML, a whole process for the comparison.
"""

import gc
import io
import sys
import zipfile
from pathlib import Path

from specgen.formats.xml_text import escape
from specgen.model.block import Document, Item, Table, Text

TABLES, ROWS, ITEMS = 25, 1330, 400


def content(times: int) -> Document:
    """1,330 table rows in 25 tables and 400 list items; `times` multiplies the rows."""
    rows = ROWS * times // TABLES
    blocks: list[Item | Table] = []
    for table in range(TABLES):
        header = tuple((Text(f"Column {n}"),) for n in range(4))
        body = tuple(tuple((Text(f"cell {table} {row} {n}, some words"),) for n in range(4)) for row in range(rows))
        blocks.append(Table(header, body, (25, 25, 25, 25)))
        blocks += [
            Item((Text(f"Item {n} of list {table}, a sentence of usual length for a step."),), 0, table, f"{n}.")
            for n in range(ITEMS // TABLES)
        ]
    return Document("D99", "Measured", "Measured", (("Project", "Measured"),), tuple(blocks), ())


def as_markdown(document: Document) -> str:
    """The same content as Markdown with pipe tables."""
    made = []
    for block in document.blocks:
        if isinstance(block, Item):
            made.append(f"1. {block.content[0].text}\n")
            continue
        rows = ["| " + " | ".join(cell[0].text for cell in row) + " |" for row in (block.header, *block.rows)]
        made.append("\n".join(["", rows[0], "|---|---|---|---|", *rows[1:], ""]))
    return "\n".join(made)


def floor(document: Document) -> bytes:
    """The same package as plain XML text, zipped at level 6: as little as any writer of this content can do."""
    parts = []
    for block in document.blocks:
        if isinstance(block, Item):
            parts.append(
                f'<w:p><w:pPr><w:pStyle w:val="Item1"/><w:numPr><w:ilvl w:val="0"/><w:numId w:val="2"/></w:numPr>'
                f'</w:pPr><w:r><w:t xml:space="preserve">{escape(block.content[0].text)}</w:t></w:r></w:p>'
            )
            continue
        parts.append("<w:tbl>")
        for row in (block.header, *block.rows):
            parts.append("<w:tr><w:trPr><w:cantSplit/></w:trPr>")
            for cell in row:
                parts.append(
                    f'<w:tc><w:tcPr><w:tcW w:w="2340" w:type="dxa"/></w:tcPr><w:p><w:pPr><w:pStyle w:val="TableText"/>'
                    f'</w:pPr><w:r><w:t xml:space="preserve">{escape(cell[0].text)}</w:t></w:r></w:p></w:tc>'
                )
            parts.append("</w:tr>")
        parts.append("</w:tbl>")
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED, compresslevel=6) as zipped:
        zipped.writestr("word/document.xml", "".join(parts), compresslevel=6)
    return made.getvalue()


def main(times: str, folder: str) -> None:
    """Write the content to a folder."""
    from specgen.documents.catalogue import templates_folder
    from specgen.formats import html
    from specgen.formats.docx import word_file as docx

    gc.set_threshold(100_000, 50, 50)  # as the command does
    document, words = content(int(times)), templates_folder()
    (Path(folder) / "measured.docx").write_bytes(docx.write_docx(document, words / "letterhead.docx"))
    (Path(folder) / "measured.html").write_bytes(html.write_html(document, words))


if __name__ == "__main__":
    main(*sys.argv[1:])
