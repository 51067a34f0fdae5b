"""The documents attached to the project, by kind."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each kind of attachment, with mark, title, and dates of each, those of side files included.

    Test reports have a table of their own.
    """
    listed: dict[str, tuple[Any, list[Any]]] = {}
    for mark in context.project.members.get(("attachments",), ()):
        kind, title, date = (context.display(("attachments", mark, name)) for name in ("kind", "title", "issued_on"))
        if kind == "test_report":
            continue
        _, cell = listed.setdefault(kind.text, (kind.text.capitalize(), []))
        cell += [*(["; "] if cell else []), f"{mark}: ", title, *([", ", date] if not date.open else [])]
        if context.project.is_given(("attachments", mark, "valid_to")):
            cell += [", valid through ", context.display(("attachments", mark, "valid_to"))]
    return TableView(("Kind", "Documents"), tuple(listed.values()), (20, 80))
