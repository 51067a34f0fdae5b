"""What is kept of the evaluation: photographs, samples, and the date of a second look."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row with a blank for each."""
    cells = (
        Blank("Photographs"),
        Blank("Retained samples"),
        Blank("Samples kept by"),
        Blank("Second viewing on", "date"),
    )
    header = ("Photographs (number, file)", "Retained samples (marks)", "Samples kept by", "Second viewing on (date)")
    return TableView(header, (cells,), (27, 27, 24, 22))
