"""The head of the drying release: one area of a face on a sheet."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.views._record_blanks import choose_face, make_blank
from specgen.model.block import Blank


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line of entries below their names."""
    kinds = {mark: context.project.get(("instruments", mark, "kind")) for mark in list_marks(context, "instruments")}
    meters = [mark for mark, kind in kinds.items() if kind == "moisture_meter"]
    line = (
        choose_face(context, "release.elevation", "d"),
        make_blank("Area", "release.area", "d"),
        ", ".join(meters) if meters else Blank("Moisture meter", field="form.moisture_meter.d"),
        make_blank("First day of the sheet", "form.first_day", "d", kind="date"),
        make_blank("Sheet number", "form.sheet", "d"),
    )
    return TableView(
        ("Elevation", "Area", "Moisture meter", "Sheet begun on", "Sheet No."), (line,), (38, 23, 14, 15, 10)
    )
