"""The documents that a draft leaves out, as too few of their values are known."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each document left out."""
    lines = tuple(
        (f"{entry.id} {entry.title}", f"{entry.known}%", f"{entry.brackets} of {entry.values}")
        for entry in context.rest.left_out
    )
    return TableView(("Document", "Values known", "In brackets"), lines, (56, 22, 22))
