"""The open items that are new or closed since the set issued before."""

from specgen.documents.changes_words import changes_of, name_owner, name_place
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each item."""
    lines = tuple(
        (name_place(context, one.path), one.label, name_owner(one.owed_by), "Open" if one.is_new else "Closed")
        for one in changes_of(context).items
    )
    return TableView(("Item", "Value", "Responsible", "Status"), lines, (24, 40, 22, 14))
