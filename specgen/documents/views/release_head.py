"""The head of the drying release: one area of a face on a sheet."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.views._record_blanks import choose_face, make_blank
from specgen.model.block import Blank


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two entries in one line."""
    kinds = {mark: context.project.get(("instruments", mark, "kind")) for mark in list_marks(context, "instruments")}
    meters = [mark for mark, kind in kinds.items() if kind == "moisture_meter"]
    lines = (
        ("Elevation", choose_face(context, "release.elevation", "d"), "Area", make_blank("Area", "release.area", "d")),
        (
            "Moisture meter",
            ", ".join(meters) if meters else Blank("Moisture meter", field="form.moisture_meter.d"),
            "Sheet No.",
            make_blank("Sheet number", "form.sheet", "d"),
        ),
    )
    return TableView(("Sheet", "Entry", "Sheet", "Entry"), lines, (15, 55, 10, 20))
