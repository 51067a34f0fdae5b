"""Columns that are too narrow for a word: in them alone words are parted."""

from collections.abc import Iterable, Sequence

from specgen.documents.figures.labels import measure
from specgen.formats.pdf.line_data import Line

# Millimeters: the size of the type of tables, 8.5 points, and both margins of a cell.
_SIZE, _MARGINS = 3.0, 2.5


def find_narrow(rows: Sequence[Sequence[Line]], widths: Sequence[int], width: float) -> list[int]:
    """The places of such columns, counted from 0, in a table of a width in millimeters; the first row is its head."""
    rooms = [width * share / sum(widths) - _MARGINS for share in widths]
    return [
        place
        for place, room in enumerate(rooms)
        if any(_is_wider(row[place], room, number == 0) for number, row in enumerate(rows))
    ]


def _is_wider(line: Line, room: float, bold: bool) -> bool:
    """Whether a word of a cell does not fit on a line; one of few signs does, however wide they are."""
    texts = (line,) if isinstance(line, str) else (piece for piece in line if isinstance(piece, str))
    return any(len(word) * _SIZE > room and measure(word, _SIZE, bold) > room for word in _list_words(texts))


def _list_words(texts: Iterable[str]) -> Iterable[str]:
    return (word for text in texts for word in text.split(" "))
