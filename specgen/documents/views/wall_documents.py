"""The documents that the decision on the walls waits for, each once, with the walls that wait for it."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import span_marks
from specgen.documents.owed_sheets import RequiredDocument
from specgen.documents.parties import name_role
from specgen.documents.views._document_stages import list_deciding
from specgen.documents.views._requests import name_document
from specgen.documents.views._rules import strip_clause
from specgen.documents.views.open_documents import find_numbers


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each document, in the order of the list of what is required, D19."""
    walls: dict[RequiredDocument, list[str]] = {}
    for mark in context.judgment.walls:
        for entry in list_deciding(context, mark):
            walls.setdefault(entry, []).append(mark)
    numbers = find_numbers(context)
    lines = tuple(
        (
            numbers[name_document(entry)],
            entry.name,
            name_role(entry.owed_by),
            strip_clause(entry.code),
            span_marks(marks),
        )
        for entry, marks in sorted(walls.items(), key=lambda one: list(numbers).index(name_document(one[0])))
    )
    return TableView(("D19", "Document", "From", "Rule", "Wall"), lines, (5, 53, 20, 14, 8))
