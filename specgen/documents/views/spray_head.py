"""The head of the spray record: day, face, area, coat, crew, gun."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.views._record_blanks import choose_crew, choose_face, choose_member, make_blank, make_boxes
from specgen.model.block import CheckBox, Text

SPRAYED = (("primer", "primer"), ("gloss", "gloss"))


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One line of entries below their names; what the project names is a box to tick."""
    line = (
        make_blank("Date", "log.date", "a", kind="date"),
        choose_face(context, "log.elevation", "a"),
        make_blank("Area", "log.area", "a"),
        make_boxes(SPRAYED, "log.step", "a"),
        choose_crew(context, {"primer", "gloss"}, "a"),
        _choose_gun(context),
        make_blank("Sheet number", "form.sheet", "a"),
    )
    header = ("Date", "Elevation", "Area", "Coat", "Crew", "Gun", "Sheet No.")
    return TableView(header, (line,), (12, 27, 15, 14, 12, 12, 8))


def _choose_gun(context: DocumentContext) -> list[Any]:
    """A box for each gun, and for a spare one where the project has it."""
    guns = list_marks(context, "guns")
    spare = any(context.project.get(("guns", gun, "spares")) for gun in guns)
    cell = choose_member(context, "guns", "form.gun", "a", "Gun")
    return [*cell, *([Text("  "), CheckBox("spare gun", "form.spare_gun.a", "yes")] if spare else [])]
