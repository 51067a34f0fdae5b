"""What is written down of the viewing itself."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Remarks, sun and time, as ruled cells."""
    lines = ("Remarks", "Sky and sun while viewing", "Time of viewing", "Distance and angle of view")
    made = tuple((line, Blank(line)) for line in lines)
    return TableView(("Viewing", "Written down"), made, (30, 70))
