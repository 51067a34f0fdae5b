"""The head of the drying release: one face on a sheet."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.views._record_blanks import choose_member
from specgen.model.block import Blank


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two entries in one line."""
    kinds = {mark: context.project.get(("instruments", mark, "kind")) for mark in list_marks(context, "instruments")}
    meters = [mark for mark, kind in kinds.items() if kind == "moisture_meter"]
    line = (
        "Elevation",
        choose_member(context, "elevations", "release.elevation", "d", "Elevation"),
        "Moisture meter",
        ", ".join(meters) if meters else Blank("Moisture meter", field="form.moisture_meter.d"),
    )
    return TableView(("Sheet", "Entry", "Sheet", "Entry"), (line,), (11, 47, 14, 28))
