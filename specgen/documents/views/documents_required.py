"""The documents still required, grouped by who owes them."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.owed_sheets import RequiredDocument
from specgen.documents.parties import name_party, name_role
from specgen.documents.required_documents import list_pending
from specgen.documents.views._asked import sort_document


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each document; the party stands by name in the first of its rows, by its role in the others."""
    by_party: dict[str, list[RequiredDocument]] = {}
    for required in list_pending(context):
        by_party.setdefault(required.owed_by, []).append(required)
    lines = tuple(
        (name_role(party) if number else name_party(context, party), *_cells(context, entry))
        for party, entries in by_party.items()
        for number, entry in enumerate(entries)
    )
    return TableView(("From", "Document", "Needed before", "Item"), lines, (21, 48, 18, 13))


def _cells(context: DocumentContext, required: RequiredDocument) -> tuple[str, str, str]:
    places = "" if required.subjects == ("project",) else f" ({', '.join(required.subjects)})"
    return f"{required.name}{places}", sort_document(context, required)[1], required.code
