"""The record of the viewing itself."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Remarks, sky, time and distance, each with a blank to fill in."""
    lines = ("Remarks", "Sky and sun while viewing", "Time of viewing", "Distance and angle of view")
    cells = tuple((line, Blank(line)) for line in lines)
    return TableView(("Viewing", "Written down"), cells, (30, 70))
