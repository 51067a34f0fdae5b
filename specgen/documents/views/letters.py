"""The compatibility letters received, by mark."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views.vouching import list_letters


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each letter: mark, title, and date."""
    lines: list[tuple[Any, ...]] = []
    for mark in list_letters(context.project):
        title, date = (context.display(("attachments", mark, name)) for name in ("title", "issued_on"))
        lines.append((mark, title, "" if date.open else date))
    return TableView(("Letter", "Title", "Date"), tuple(lines), (10, 65, 25))
