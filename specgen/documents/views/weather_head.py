"""The head of the weather record, with the instruments of the job."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.views._record_blanks import choose_face, make_blank
from specgen.model.block import Blank, CheckBox

_INSTRUMENTS = ("air_thermometer", "surface_thermometer", "hygrometer", "wind_meter")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two entries in a line."""
    kinds = {mark: context.project.get(("instruments", mark, "kind")) for mark in list_marks(context, "instruments")}
    marks = [mark for name in _INSTRUMENTS for mark, kind in kinds.items() if kind == name]
    lines = (
        (
            "Date",
            make_blank("Date", "log.date", "c", kind="date"),
            "Instruments",
            ", ".join(marks) if marks else Blank("Instruments", field="form.instruments.c"),
        ),
        (
            "Elevation",
            choose_face(context, "log.elevation", "c"),
            "Read by",
            make_blank("Read by", "form.read_by", "c"),
        ),
        (
            "Access",
            [CheckBox("inspected before the shift, open edges guarded", "form.access_inspected.c", "yes")],
            "Competent person",
            make_blank("Competent person", "form.competent_person", "c"),
        ),
    )
    return TableView(("Sheet", "Entry", "Sheet", "Entry"), lines, (11, 47, 12, 30))
