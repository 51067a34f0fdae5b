"""Which primer and gloss go on which face: boxed together from one natural break to the next."""

from fractions import Fraction
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks, name_linked, name_member
from specgen.documents.takeoff import FaceArea, find_mockup_area, list_faces, number_batches, tell_summed, tell_volume
from specgen.documents.views._areas import name_missing
from specgen.model.absence import Absent
from specgen.model.working import Working
from specgen.quantities.units import UNITS

_COATS = ("primer", "gloss")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each face, one for a mockup that stands by itself, and their sum: what is ordered."""
    lines: list[tuple[Any, ...]] = []
    mockup = find_mockup_area(context)
    if mockup is not None:
        lines.append(
            ("BM", "Mockup", _colors(context), "its edges", tell_summed(context, mockup), *_shares(context, mockup))
        )
    faces = list_faces(context)
    batches = number_batches(context)
    for mark, face in faces.items():
        begin = (batches[mark], name_member(context, "elevations", mark), _color(context, mark), _breaks(context, mark))
        if isinstance(face, FaceArea):
            lines.append((*begin, tell_summed(context, face.coated), *_shares(context, face.coated)))
        else:
            lines.append((*begin, name_missing(context, face), "", ""))
    known = [face.coated for face in faces.values() if isinstance(face, FaceArea)]
    if len(lines) > 1 and len(known) == len(faces):
        whole = sum(known, mockup or Fraction(0))
        lines.append(("Total", "", "", "", tell_summed(context, whole), *_shares(context, whole)))
    lines = lines or [(context.ask(("elevations",)), *("",) * 6)]
    header = ("Boxed batch", "Face", "Color", "Natural breaks", "Coated area", "Primer", "Gloss")
    return TableView(header, tuple(lines), (8, 18, 17, 24, 12, 10, 11))


def _color(context: DocumentContext, mark: str) -> Any:
    return name_linked(context, ("elevations", mark, "color"), "colors")


def _colors(context: DocumentContext) -> list[Any]:
    """The colors of the faces, each once: those that the mockup shows."""
    marks = list_marks(context, "elevations")
    used = [color.mark for mark in marks if (color := context.project.get(("elevations", mark, "color"))) is not None]
    names = [name_member(context, "colors", color) for color in dict.fromkeys(used)]
    return [piece for name in names for piece in (", ", name)][1:]


def _breaks(context: DocumentContext, mark: str) -> list[Any]:
    """`left outside corner, meets E2; right end`."""
    parts: list[Any] = []
    for side in ("left", "right"):
        end = context.display(("elevations", mark, f"{side}_end"))
        met = context.project.get(("elevations", mark, f"{side}_meets"))
        parts += ["; " if parts else "", f"{side} ", end, f", meets {met.mark}" if met is not None else ""]
    return parts


def _shares(context: DocumentContext, area: Fraction) -> list[Any]:
    """The primer and the gloss of an area, the reserve included: its share of what is ordered."""
    return [_share(context, coat, area) for coat in _COATS]


def _share(context: DocumentContext, coat: str, area: Fraction) -> Any:
    try:
        working = context.resolve((coat,), "coating-quantity")
    except Absent as absent:
        return name_missing(context, absent)
    assert isinstance(working, Working)
    whole = next(step for step in working.steps if step.symbol == "A")
    part = area / (Fraction(repr(whole.value)) * UNITS[whole.unit].factor)
    return tell_volume(context, working.quantity * part)
