"""The documents attached to the project, by kind."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each kind of attachment, with mark, title and date of each, those of the side files included."""
    listed: dict[str, tuple[Any, list[Any]]] = {}
    for mark in context.project.members.get(("attachments",), ()):
        kind, title, date = (context.display(("attachments", mark, name)) for name in ("kind", "title", "issued_on"))
        _, cell = listed.setdefault(kind.text, (kind.text.capitalize(), []))
        cell += [*(["; "] if cell else []), f"{mark} ", title, *([", ", date] if not date.open else [])]
    return TableView(("Kind", "Documents"), tuple(listed.values()), (20, 80))
