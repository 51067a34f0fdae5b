"""Who took the readings of the acceptance form, when, and with which instrument."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.block import Blank

_LINES, _ABREAST = 3, 4
_ASKED = ("Criteria", "Instrument, No.", "By", "Date")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Four records abreast in each of three lines, each a blank."""
    lines = tuple(
        tuple(
            Blank(f"{asked}, record {_ABREAST * line + place}", field=f"form.read.{_ABREAST * line + place}.{number}")
            for place in range(1, _ABREAST + 1)
            for number, asked in enumerate(_ASKED, 1)
        )
        for line in range(_LINES)
    )
    return TableView(_ASKED * _ABREAST, lines, (6, 10, 5, 4) * _ABREAST)
