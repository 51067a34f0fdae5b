"""The head of the viscosity and water record."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import choose_face, make_blank, make_boxes
from specgen.documents.views.spray_head import SPRAYED


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line of entries below their names."""
    line = (
        make_blank("Date", "log.date", "b", kind="date"),
        choose_face(context, "log.elevation", "b"),
        make_blank("Area", "log.area", "b"),
        make_boxes(SPRAYED, "log.step", "b"),
        make_boxes((("yes", "boxed"), ("no", "one batch")), "log.boxed_batches", "b"),
        make_blank("Source of water", "form.water_source", "b"),
        make_blank("Sheet number", "form.sheet", "b"),
    )
    header = ("Date", "Elevation", "Area", "Coat", "Batches", "Water from", "Sheet No.")
    return TableView(header, (line,), (12, 26, 13, 14, 15, 12, 8))
