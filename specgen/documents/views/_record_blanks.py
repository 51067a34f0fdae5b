"""Blanks and boxes of the forms of the site record, named as the reader of records reads them back.

A name is the field, the row, and where there is one the choice or the place in a list: `log.air.c3`,
`log.elevation.a.E1`, `log.panels.a.4`. The letter of a row is that of its form; the row without a number is its head,
whose entries hold for all its rows. A row of a step that is printed has its name: `release.date.d-primer-1`. What no
record holds begins with `form`.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any, Literal

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks, name_member
from specgen.documents.records.form_sections import AGAIN
from specgen.model.block import Blank, CheckBox, Text

_GAP = Text("  ")
# So many boxes of a choice stand on a form; of more members the mark is written in.
MOST_BOXES = 12
# Stands behind work that the project has or has not, as it says neither.
WHERE_USED = "where used"


def make_blank(label: str, field: str, row: str, part: int | str = "", kind: Literal["text", "date"] = "text") -> Blank:
    """A blank of a row; `part` is the place in a list."""
    return Blank(label, kind, f"{field}.{row}.{part}" if part else f"{field}.{row}")


def repeat_blank(label: str, field: str, row: str) -> Blank:
    """A blank of a further sheet for what stands on the first; a record that is printed has it there too."""
    return Blank(f"{label}, second sheet", field=f"{AGAIN}{field}.{row}")


def make_boxes(choices: Iterable[tuple[str, str]], field: str, row: str) -> list[Any]:
    """A box for each choice, its value and its label, side by side."""
    cell: list[Any] = []
    for value, label in choices:
        cell += [*([_GAP] if cell else []), CheckBox(label, f"{field}.{row}", value)]
    return cell


def choose_member(context: DocumentContext, collection: str, field: str, row: str, label: str) -> list[Any]:
    """A box for each member that the project names, else a blank for the mark."""
    marks = list_marks(context, collection)
    if not marks or len(marks) > MOST_BOXES:
        return [make_blank(label, field, row)]
    names = [(mark, name_member(context, collection, mark) if collection == "elevations" else mark) for mark in marks]
    return make_boxes(names, field, row)


def choose_face(context: DocumentContext, field: str, row: str) -> list[Any]:
    """A box for each elevation and for the mockup, which is no elevation of the records."""
    faces = choose_member(context, "elevations", field, row, "Elevation")
    return [*faces, _GAP, CheckBox("mockup", f"form.mockup.{row}", "yes")]


def choose_crew(context: DocumentContext, steps: set[str], row: str) -> list[Any]:
    """A box for each crew that carries out one of these steps, else a blank."""
    crews = list_marks(context, "crews")
    doing = [crew for crew in crews if steps & set(map(str, context.project.get(("crews", crew, "steps")) or ()))]
    if not doing or len(doing) > MOST_BOXES:
        return [make_blank("Crew", "log.crew", row)]
    return make_boxes(((crew, crew) for crew in doing), "log.crew", row)


def bracket(value: DisplayValue, said: str) -> DisplayValue:
    """The value; where it is still to be given a short name in brackets, as the column of a form is narrow."""
    return replace(value, text=f"[{said}]") if value.open else value
