"""The head of the spray record: day, face, area, coat, crew, gun."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import choose_crew, choose_member, make_blank, make_boxes

SPRAYED = (("primer", "primer"), ("gloss", "gloss"))


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two entries in a line; what the project names is a box to tick."""
    lines = (
        ("Date", make_blank("Date", "log.date", "a", kind="date"), "Coat", make_boxes(SPRAYED, "log.step", "a")),
        (
            "Elevation",
            choose_member(context, "elevations", "log.elevation", "a", "Elevation"),
            "Crew",
            choose_crew(context, {"primer", "gloss"}, "a"),
        ),
        (
            "Area",
            make_blank("Area", "log.area", "a"),
            "Gun",
            choose_member(context, "guns", "form.gun", "a", "Gun"),
        ),
    )
    return TableView(("Sheet", "Entry", "Sheet", "Entry"), lines, (11, 45, 9, 35))
