"""The release of each hold point in writing: one place to sign for each elevation."""

from collections.abc import Iterator
from itertools import zip_longest
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.layout_release import LAID_OUT, find_layout_release
from specgen.documents.marks import list_marks
from specgen.documents.steps import StepPage, steps
from specgen.documents.views._not_shown import name_not_shown
from specgen.documents.views._record_blanks import make_blank
from specgen.model.block import Blank
from specgen.model.standard import Step
from specgen.model.value_text import long_date, words
from specgen.reading.records.row_names import name_signature
from specgen.scheduling.applying import applies
from specgen.scheduling.releases import find_release_form, find_releasing_role, has_inspector

# Elevations side by side; of more, one sheet is used for each.
_ABREAST = 3
_NONE = "–"
_SIGNED = 26  # the share of the width for the signatures of one half
_BY = {"inspector": "Insp.", "architect": "Arch."}
# Hold points of the walls alone: the finish of the mockup is accepted on its own form, and it has no caps.
_NOT_ON_MOCKUP = ("acceptance", "metal_caps", "final_viewing")
# The step that is released of the mockup alone.
_MOCKUP = "mockup"
# The document on which the joint layout is released, and the form of this table.
LAYOUT, _FORM = "D07", "D11"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two hold points in a line, each with a date to sign for each elevation and for the mockup."""
    faces = find_faces(context)
    points = list(_points(context, composer, faces))
    half = (len(points) + 1) // 2
    empty = ("",) * (4 + len(faces))
    lines = tuple((*left, *right) for left, right in zip_longest(points[:half], points[half:], fillvalue=empty))
    signed = (*(face or "Signed, date" for face in faces), "Mockup")
    each = _SIGNED // len(signed)
    widths = (4, 50 - 4 - 6 - each * len(signed), 6, *(each,) * len(signed))
    return TableView(("No.", "Hold point", "By", *signed) * 2, lines, widths * 2)


def find_faces(context: DocumentContext) -> tuple[str, ...]:
    """The elevations with a column of their own; an empty mark where each has a sheet."""
    marks = list_marks(context, "elevations")
    return marks if 0 < len(marks) <= _ABREAST else ("",)


def list_signers(context: DocumentContext) -> tuple[str, ...]:
    """The roles that sign here for hold points."""
    points = [step for step in context.standards.steps.values() if find_release_form(step) == _FORM]
    return tuple(dict.fromkeys(find_releasing_role(context.project, step) for step in points))


def name_role(role: str) -> str:
    """`Insp.`: a role as the form tells it."""
    return _BY.get(role, words(role).capitalize())


def _points(context: DocumentContext, composer: Composer, faces: tuple[str, ...]) -> Iterator[tuple[Any, ...]]:
    """Each hold point in the order of the work, the joint layout, and what is witnessed in place after the mockup."""
    for page in steps(context, composer):
        step = context.standards.steps[page.name]
        if page.name == LAID_OUT:
            release = find_layout_release(context)
            layout = f"Joint layout, latest {long_date(release.latest)}" if release else "Joint layout"
            yield (_NONE, layout, _BY["architect"], *(f"on {LAYOUT}" for _ in (*faces, "mockup")))
        if page.hold:
            role = find_releasing_role(context.project, step)
            here = page.release_form == _FORM
            signed = (*_sign(context, page.name, role, step, faces), _sign_mockup(page, role)) if here else ()
            yield (f"H{page.hold}", page.title, name_role(role), *(signed or _refer(context, page, faces)))
        if page.name == _MOCKUP and name_not_shown(context):
            yield from (_witness(role, faces) for role in list_witnesses(context))


def _sign_mockup(page: StepPage, role: str) -> Any:
    """A date to sign for the mockup, where it shows the work."""
    if page.name in _NOT_ON_MOCKUP:
        return _NONE
    return make_blank(f"Released on the mockup: {page.title}", "form.mockup_released", page.name, role, "date")


def _refer(context: DocumentContext, page: StepPage, faces: tuple[str, ...]) -> Iterator[str]:
    """The form on which a point is signed instead of here, in each column that it is signed for."""
    step, said = context.standards.steps[page.name], f"on {page.release_form}"
    for face in faces:
        yield said if page.name != _MOCKUP and _takes(context, step, face) else _NONE
    yield said


def list_witnesses(context: DocumentContext) -> tuple[str, ...]:
    """The roles that witness the first of each detail that the mockup does not show."""
    return (*(("inspector",) if has_inspector(context.project) else ()), "architect")


def _witness(role: str, faces: tuple[str, ...]) -> tuple[Any, ...]:
    """The first of each detail that the mockup does not show, signed by one of those who have witnessed it."""
    cells = (
        _make_place(f"Witnessed, {words(role)}: first in place {face}".strip(), "first_in_place", face, role)
        for face in faces
    )
    return ("W", "First in place: witnessed, no release", _BY[role], *cells, _NONE)


def _sign(context: DocumentContext, name: str, role: str, step: Step, faces: tuple[str, ...]) -> tuple[Any, ...]:
    """A date to sign for each elevation whose wall takes the step; one alone where it is released once."""
    cells: list[Any] = []
    for place, face in enumerate(faces):
        if (step.once and place) or not _takes(context, step, face):
            cells.append(_NONE)
            continue
        label = f"Released: {step.title}, {face}" if face else f"Released: {step.title}"
        cells.append(_make_place(label, name, "" if step.once else face, role))
    return tuple(cells)


def _make_place(label: str, name: str, face: str, role: str) -> Blank:
    """The place for the date of a signature."""
    return make_blank(label, "inspection.done_on", name, name_signature(face, role), "date")


def _takes(context: DocumentContext, step: Step, face: str) -> bool:
    """Whether the wall of an elevation takes a step; so it does where its wall is not told."""
    wall = context.project.get(("elevations", face, "wall")) if face else None
    return wall is None or applies(step.when, context.project, wall.mark)
