"""The documents still required, grouped by who owes them."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.required_documents import RequiredDocument, list_pending
from specgen.documents.views._parties import name_party


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each document; the party stands in the first of its rows."""
    by_party: dict[str, list[RequiredDocument]] = {}
    for required in list_pending(context):
        by_party.setdefault(required.owed_by, []).append(required)
    lines = tuple(
        ("" if number else name_party(context, party), entry.name, _name_places(entry), entry.code)
        for party, entries in by_party.items()
        for number, entry in enumerate(entries)
    )
    return TableView(("From", "Document", "For", "Rule"), lines, (28, 46, 14, 12))


def _name_places(required: RequiredDocument) -> str:
    return "" if required.subjects == ("project",) else ", ".join(required.subjects)
