"""The head of the second sheet of a spray record, by which it is told apart where it is copied by itself."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import repeat_blank
from specgen.model.block import Strong, Text


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line of entries, those of the first sheet."""
    line = (
        Strong((Text("D12a Spray record, panels"),)),
        repeat_blank("Date", "log.date", "a"),
        repeat_blank("Elevation", "log.elevation", "a"),
        repeat_blank("Area", "log.area", "a"),
        repeat_blank("Coat", "log.step", "a"),
        repeat_blank("Sheet number", "form.sheet", "a"),
    )
    return TableView(("Form", "Date", "Elevation", "Area", "Coat", "Sheet No."), (line,), (24, 14, 18, 22, 12, 10))
