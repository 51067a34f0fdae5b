"""The documents that are newly required, or no longer, since the set issued before."""

from specgen.documents.changes_words import changes_of
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.parties import tell_party


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each document."""
    changes = changes_of(context)
    told = [(one, "Required") for one in changes.owed] + [(one, "No longer required") for one in changes.settled]
    lines = tuple((one.name, ", ".join(one.subjects), tell_party(context, one.owed_by), status) for one, status in told)
    return TableView(("Document", "For", "Responsible", "Status"), lines, (40, 14, 26, 20))
