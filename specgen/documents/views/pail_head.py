"""The head of the viscosity and water record."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import choose_face, make_blank, make_boxes
from specgen.documents.views.spray_head import SPRAYED


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two entries in a line."""
    boxed = make_boxes((("yes", "boxed"), ("no", "one batch")), "log.boxed_batches", "b")
    lines = (
        ("Date", make_blank("Date", "log.date", "b", kind="date"), "Coat", make_boxes(SPRAYED, "log.step", "b")),
        (
            "Elevation",
            choose_face(context, "log.elevation", "b"),
            "Batches",
            boxed,
        ),
        (
            "Area",
            make_blank("Area", "log.area", "b"),
            "Water from",
            make_blank("Source of water", "form.water_source", "b"),
        ),
    )
    return TableView(("Sheet", "Entry", "Sheet", "Entry"), lines, (11, 47, 11, 31))
