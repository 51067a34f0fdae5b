"""Lines for remarks on the acceptance form."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank

_LINES = 4


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Four lines, each a blank, and one for its closing."""
    lines = tuple(
        (
            str(number),
            Blank(f"Remarks, line {number}", field=f"form.remarks.{number}"),
            Blank(f"Closed, line {number}", field=f"form.closed.{number}"),
        )
        for number in range(1, _LINES + 1)
    )
    return TableView(
        ("Line", "Remarks, with the number of the criterion", "Closed: date, initials"), lines, (5, 75, 20)
    )
