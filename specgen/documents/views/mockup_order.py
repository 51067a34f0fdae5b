"""The steps of the mockup in order: the first day, what each waits for, hold or witness point."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.mockup_days import list_days, list_lines

_NONE = "–"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row per step: number, first day, what it waits for, title, hold or witness point."""
    lines = list_lines(context, composer)
    cells = [
        (str(number), day, composer.inlines(line.wait) if line.wait else _NONE, line.title, line.point or _NONE)
        for number, (line, day) in enumerate(zip(lines, list_days(context, lines), strict=True), 1)
    ]
    header = ("No.", "Not before", "Do not begin until", "Step", "Point")
    return TableView(header, tuple(cells), (5, 18, 31, 27, 19))
