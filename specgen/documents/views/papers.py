"""The documents attached to the project: mark, kind, title, date, what they cover."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each attachment, including those of the side files."""
    lines = tuple(
        (
            mark,
            context.display(("attachments", mark, "kind")),
            context.display(("attachments", mark, "title")),
            context.display(("attachments", mark, "issued_on")),
            context.display(("attachments", mark, "covers")),
        )
        for mark in context.project.members.get(("attachments",), ())
    )
    return TableView(("Mark", "Kind", "Title", "Date", "Covers"), lines, (13, 14, 37, 18, 18))
