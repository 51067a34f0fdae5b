"""The dispositions that settle nothing as they stand: where, why, and what would be right."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each, in the order in which they were read."""
    found = context.recorded.unmatched
    lines = tuple((one.file, one.message[:1].upper() + one.message[1:], one.hint) for one in found)
    return TableView(("Entry", "What is wrong", "What would be right"), lines, (26, 42, 32))
