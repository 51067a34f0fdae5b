"""The head of the second sheet of the readings in place, by which it is told apart where it is copied by itself."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import make_blank, repeat_blank
from specgen.model.block import Strong, Text


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line of entries, those of the first sheet, and the signature of this one."""
    line = (
        Strong((Text("D12e Readings in place, second sheet"),)),
        repeat_blank("Elevation", "form.elevation", "e"),
        repeat_blank("Area", "form.area", "e"),
        repeat_blank("Sheet number", "form.sheet", "e"),
        make_blank("Signed, date, second sheet", "form.signed", "e2"),
    )
    return TableView(("Form", "Elevation", "Area", "Sheet No.", "Signed, date"), (line,), (28, 18, 22, 10, 22))
