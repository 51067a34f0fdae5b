"""The head of the readings in place: one area of a face on a sheet."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import choose_face, make_blank


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line of entries below their names."""
    line = (
        choose_face(context, "form.elevation", "e"),
        make_blank("Area", "form.area", "e"),
        make_blank("Numbers of the instruments", "form.instruments", "e"),
        make_blank("First day of the sheet", "form.first_day", "e", kind="date"),
        make_blank("Sheet number", "form.sheet", "e"),
    )
    return TableView(
        ("Elevation", "Area", "Instruments, No.", "Sheet begun on", "Sheet No."), (line,), (36, 20, 20, 14, 10)
    )
