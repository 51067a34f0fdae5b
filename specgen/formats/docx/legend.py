"""The legend of a Word document: the letters of its sources, two beside each other."""

from specgen.documents.no_break import keep_words
from specgen.documents.source_letters import WITHOUT_LETTER
from specgen.formats.docx.writer import KEEP, Writer

# From so many sources on they stand in two columns.
_MANY = 4


def render_legend(writer: Writer) -> str:
    """The head of the legend, and its lines; the first and the last two stay together."""
    legend = writer.document.legend
    plain = '<w:b w:val="0"/>'
    head = writer.render_paragraph(
        "Legend head", writer.render_run("Sources of the figures") + writer.render_run(f"\u2003{WITHOUT_LETTER}", plain)
    )
    beside = 2 if len(legend) >= _MANY else 1
    columns = [writer.width // beside] * beside
    pairs = [legend[start : start + beside] for start in range(0, len(legend), beside)]
    rows = []
    for number, pair in enumerate(pairs):
        keep = KEEP if number in (0, len(pairs) - 2) and number < len(pairs) - 1 else ""
        cells = [_render_source(writer, mark, text, keep) for mark, text in pair]
        cells += [writer.render_paragraph("Legend", "")] * (beside - len(cells))
        rows.append(writer.render_layout_row(cells, columns))
    return (
        head
        + writer.frame_table("".join(rows), columns, "Layout", "Sources of the figures", "0400")
        + writer.render_gap()
    )


def _render_source(writer: Writer, mark: str, text: str, keep: str) -> str:
    words = f"{writer.render_run(mark)}<w:r><w:tab/></w:r>{writer.render_run(keep_words(text))}"
    return writer.render_paragraph("Legend", words, keep)
