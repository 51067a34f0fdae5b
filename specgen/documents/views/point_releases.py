"""The release of each hold point in writing: one place to sign for each elevation."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.releases import name_party
from specgen.documents.steps import applies, steps
from specgen.documents.views.test_plan import list_forms
from specgen.model.block import Blank
from specgen.model.standard import Step

# Elevations side by side; of more, one sheet is used for each.
_ABREAST = 4
# What is released once for all elevations.
_ONCE = ("mockup", "old_coating")
_NONE = "–"
_SIGNED = 36  # the share of the width for signatures


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each hold point, the joint layout among them, with a date to sign for each elevation."""
    marks = list_marks(context, "elevations")
    faces = marks if 0 < len(marks) <= _ABREAST else ("",)
    lines: list[tuple[Any, ...]] = []
    for page in steps(context, composer):
        step = context.standards.steps[page.name]
        if page.name == "aesthetic_joints":
            layout = (_NONE, "Joint layout, before the first cut", name_party(context, "architect"), "D07")
            lines.append((*layout, *_sign(context, "joint_layout", step, faces)))
        if page.hold:
            title = f"{page.title}: {page.point_of}" if page.point_of else page.title
            said = (f"H{page.hold}", title, composer.inlines(page.released_by), list_forms(step.records))
            lines.append((*said, *_sign(context, page.name, step, faces)))
    signed = tuple(f"{face}: signed, date" if face else "Elevation, signed, date" for face in faces)
    each = _SIGNED // len(faces)
    widths = (5, 27, 100 - 5 - 27 - 10 - each * len(faces), 10, *(each,) * len(faces))
    return TableView(("No.", "Hold point", "Released by", "Form", *signed), tuple(lines), widths)


def _sign(context: DocumentContext, name: str, step: Step, faces: tuple[str, ...]) -> tuple[Any, ...]:
    """A date to sign for each elevation whose wall takes the step; one alone where it is released once."""
    cells: list[Any] = []
    for place, face in enumerate(faces):
        if (name in _ONCE and place) or not _takes(context, step, face):
            cells.append(_NONE)
            continue
        label = f"Released: {step.title}, {face}" if face else f"Released: {step.title}"
        field = f"inspection.done_on.{name}"
        cells.append(Blank(label, "date", f"{field}.{face}" if face else field))
    return tuple(cells)


def _takes(context: DocumentContext, step: Step, face: str) -> bool:
    """Whether the wall of an elevation takes a step; so it does where its wall is not told."""
    wall = context.project.get(("elevations", face, "wall")) if face else None
    return wall is None or applies(step.when, context, wall.mark)
