"""What is open at closeout, with who owes it."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.records.closeout import list_open


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each."""
    lines = tuple((one.what, one.by, one.see) for one in context.remember(list_open))
    return TableView(("Open", "By", "See"), lines, (62, 28, 10))
