"""The release of each hold point in writing: one place to sign for each elevation."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks
from specgen.documents.releases import name_party
from specgen.documents.steps import StepPage, steps
from specgen.model.block import Blank

# Elevations side by side; of more, one sheet is used for each.
_ABREAST = 4
# What is released once for all elevations.
_ONCE = ("mockup", "old_coating")
_NONE = "–"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each hold point, the joint layout among them, with a date to sign for each elevation."""
    faces = list_marks(context, "elevations")
    faces = faces if 0 < len(faces) <= _ABREAST else ("",)
    pages = steps(context, composer)
    lines = []
    for page in pages:
        if page.name == "aesthetic_joints":
            lines.append(
                _line(
                    "–",
                    "Joint layout, before the first cut",
                    name_party(context, "architect"),
                    "D07",
                    "joint_layout",
                    faces,
                )
            )
        if page.hold:
            lines.append(_step_line(composer, page, faces))
    signed = tuple(f"{face}: signed, date" if face else "Elevation, signed, date" for face in faces)
    each = 40 // len(faces)
    return TableView(
        ("No.", "Hold point", "Released by", "Form", *signed),
        tuple(lines),
        (5, 22, 60 - 35, 100 - 52 - each * len(faces), *(each,) * len(faces)),
    )


def _step_line(composer: Composer, page: StepPage, faces: tuple[str, ...]) -> tuple[Any, ...]:
    title = f"{page.title}: {page.point_of}" if page.point_of else page.title
    forms = page.forms.removeprefix("Forms ").removeprefix("Form ")
    return _line(str(page.hold), title, composer.inlines(page.released_by), forms, page.name, faces)


def _line(number: str, title: str, releaser: Any, forms: str, name: str, faces: tuple[str, ...]) -> tuple[Any, ...]:
    shown = faces[:1] if name in _ONCE else faces
    blanks = [
        Blank(_label(title, face), "date", ".".join(filter(None, ("inspection.done_on", name, face)))) for face in shown
    ]
    return (number, title, releaser, forms, *blanks, *(_NONE,) * (len(faces) - len(shown)))


def _label(title: str, face: str) -> str:
    return f"Released: {title}, {face}" if face else f"Released: {title}"
