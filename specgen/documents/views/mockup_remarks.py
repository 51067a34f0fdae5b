"""Lines for remarks on the acceptance form."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank

_LINES = 5


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Five lines, each a blank."""
    lines = tuple((str(number), Blank(f"Remarks, line {number}")) for number in range(1, _LINES + 1))
    return TableView(("Line", "Remarks, with the number of the criterion"), lines, (5, 95))
