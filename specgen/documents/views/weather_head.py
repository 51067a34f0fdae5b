"""The head of the weather record, with the instruments of the job."""

from collections.abc import Iterator

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.views._record_blanks import choose_face, make_blank, make_boxes
from specgen.model.block import Blank, CheckBox
from specgen.model.value_text import words
from specgen.scheduling.applying import applies

# The work on which weather has limits.
_WORK = (
    *("wrb", "boards", "heavy_mesh", "mesh", "second_pass"),
    *("smoothing_1", "smoothing_2", "primer", "gloss", "sealant"),
)
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
            "Work",
            make_boxes(_list_work(context), "log.step", "c"),
            "Access",
            CheckBox("inspected before the shift, open edges guarded", "form.access_inspected.c", "yes"),
        ),
        (
            "Competent person",
            make_blank("Competent person", "form.competent_person", "c"),
            "Sheet No.",
            make_blank("Sheet No.", "form.sheet", "c"),
        ),
    )
    return TableView(("Sheet", "Entry", "Sheet", "Entry"), lines, (11, 47, 12, 30))


def _list_work(context: DocumentContext) -> Iterator[tuple[str, str]]:
    """The steps of the work that a wall of the project takes, each with its name."""
    walls = list_marks(context, "walls")
    for name in _WORK:
        when = context.standards.steps[name].when
        if not walls or any(applies(when, context.project, wall) for wall in walls):
            yield name, words(name)
