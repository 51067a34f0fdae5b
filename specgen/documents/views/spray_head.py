"""The head of the spray record: day, face, area, coat, crew, sprayer, gun."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.views._record_blanks import (
    MOST_BOXES,
    choose_crew,
    choose_face,
    choose_member,
    make_blank,
    make_boxes,
)
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
        _choose_sprayer(context),
        _choose_gun(context),
        make_blank("Sheet number", "form.sheet", "a"),
    )
    header = ("Date", "Elevation", "Area", "Coat", "Crew", "Sprayer", "Gun", "Sheet No.")
    return TableView(header, (line,), (11, 24, 12, 13, 9, 13, 11, 7))


def _choose_sprayer(context: DocumentContext) -> list[Any]:
    """A box for each sprayer by name, else a blank."""
    people = [("people", mark) for mark in list_marks(context, "people")]
    named = [context.project.get((*at, "name")) for at in people if context.project.get((*at, "role")) == "sprayer"]
    names = [str(name) for name in dict.fromkeys(named) if name]
    if not names or len(names) > MOST_BOXES:
        return [make_blank("Sprayer", "form.sprayer", "a")]
    return make_boxes(((name, name) for name in names), "form.sprayer", "a")


def _choose_gun(context: DocumentContext) -> list[Any]:
    """A box for each gun, and for a spare one where the project has it."""
    guns = list_marks(context, "guns")
    spare = any(context.project.get(("guns", gun, "spares")) for gun in guns)
    cell = choose_member(context, "guns", "form.gun", "a", "Gun")
    return [*cell, *([Text("  "), CheckBox("spare gun", "form.spare_gun.a", "yes")] if spare else [])]
