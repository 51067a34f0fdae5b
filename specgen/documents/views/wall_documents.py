"""The documents that the decision on the walls waits for, each once, with the walls that wait for it."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import span_marks
from specgen.documents.owed_sheets import RequiredDocument
from specgen.documents.parties import name_role
from specgen.documents.views._rules import strip_clause
from specgen.documents.views.answers import list_deciding


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each document, in the order of the list of what is required."""
    walls: dict[RequiredDocument, list[str]] = {}
    for mark in context.judgment.walls:
        for entry in list_deciding(context, mark):
            walls.setdefault(entry, []).append(mark)
    lines = tuple(
        (entry.name, name_role(entry.owed_by), strip_clause(entry.code), span_marks(marks))
        for entry, marks in walls.items()
    )
    return TableView(("Document", "From", "Rule", "Wall"), lines, (57, 20, 15, 8))
