"""The head of the weather record: day, face, who reads, that the access was inspected."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import choose_face, make_blank
from specgen.model.block import CheckBox


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line of entries below their names."""
    line = (
        make_blank("Date", "log.date", "c", kind="date"),
        choose_face(context, "log.elevation", "c"),
        make_blank("Read by", "form.read_by", "c"),
        CheckBox("inspected before the shift, open edges guarded", "form.access_inspected.c", "yes"),
        make_blank("Competent person", "form.competent_person", "c"),
        make_blank("Sheet number", "form.sheet", "c"),
    )
    header = ("Date", "Elevation", "Read by", "Access", "Competent person", "Sheet No.")
    return TableView(header, (line,), (12, 28, 14, 24, 14, 8))
