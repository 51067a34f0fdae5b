"""Who took the readings of the acceptance form, when, and with which instrument."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank

_LINES = 7
_ASKED = ("Criteria No.", "Instrument, serial number", "Read by", "Date")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two records abreast in each of seven lines, each a blank."""
    lines = tuple(
        tuple(Blank(f"{asked}, record {2 * line + half}") for half in (1, 2) for asked in _ASKED)
        for line in range(_LINES)
    )
    return TableView(_ASKED * 2, lines, (8, 20, 14, 8) * 2)
