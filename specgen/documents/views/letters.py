"""The compatibility letters received, by mark, with the materials that each covers."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views.vouching import TITLES, list_letters


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each letter: mark, title, the manufacturers it covers, and date."""
    lines: list[tuple[Any, ...]] = []
    for mark in list_letters(context.project):
        title, date = (context.display(("attachments", mark, name)) for name in ("title", "issued_on"))
        parties = context.project.get(("attachments", mark, "parties")) or ()
        covered = ", ".join(TITLES[role] for role in TITLES if role in parties)
        lines.append((mark, title, covered, "" if date.open else date))
    return TableView(("Letter", "Title", "Covers", "Date"), tuple(lines), (9, 42, 28, 21))
