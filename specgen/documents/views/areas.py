"""The take-off of areas by elevation: gross, openings, net, sides of aesthetic joints, returns, what is coated."""

from fractions import Fraction
from typing import Any, cast

from specgen.computing.face_area import list_covering
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.layouts import tell_length
from specgen.documents.marks import name_member
from specgen.documents.takeoff import FaceArea, find_mockup_area, list_faces, tell_summed
from specgen.documents.views._areas import name_missing
from specgen.documents.views._bare import bare, head_unit
from specgen.model.typed_views import Elevation

_AREAS = ("Gross", "Openings", "Net", "Joint sides", "Returns", "Coated")
_COVERED = "Openings, covered wall"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each elevation, one for a mockup that stands by itself, and their sum."""
    faces = list_faces(context)
    known = [face for face in faces.values() if isinstance(face, FaceArea)]
    lines = [
        _line(context, face)
        if isinstance(face, FaceArea)
        else (name_member(context, "elevations", mark), name_missing(context, face), *("",) * 6)
        for mark, face in faces.items()
    ]
    mockup = find_mockup_area(context)
    if mockup is not None:
        lines.append(
            (
                "Mockup",
                _tell(context, mockup),
                "",
                _tell(context, mockup),
                *("",) * 3,
                _tell(context, mockup),
            )
        )
    if len(lines) > 1 and len(known) == len(faces):
        lines.append(_sum(context, known, mockup or Fraction(0)))
    lines = lines or [(context.ask(("elevations",)), *("",) * 7)]
    titles = [_COVERED if title == "Openings" and _is_covered(context) else title for title in _AREAS]
    gross, openings, net, sides, returns, coated = (head_unit(context, title, "area") for title in titles)
    header = ("Elevation", gross, openings, net, "Aesthetic joints", sides, returns, coated)
    return TableView(header, tuple(lines), (20, 13, 12, 13, 11, 10, 10, 13))


def _is_covered(context: DocumentContext) -> bool:
    """Whether a roof, a ledger or a fitting covers wall besides the openings."""
    marks = context.project.members.get(("elevations",), ())
    faces = (cast(Elevation, context.project.view(("elevations", mark))) for mark in marks)
    return any(list_covering(face) for face in faces)


def _line(context: DocumentContext, face: FaceArea) -> tuple[Any, ...]:
    return (
        name_member(context, "elevations", face.mark),
        _tell(context, face.gross),
        _tell(context, face.openings),
        _tell(context, face.net),
        tell_length(context, face.joints) if face.joints is not None else "",
        _tell(context, face.sides),
        _tell(context, face.returns),
        _tell(context, face.coated),
    )


def _sum(context: DocumentContext, faces: list[FaceArea], mockup: Fraction) -> tuple[Any, ...]:
    """The last row; the sums are those of the exact figures."""
    whole = FaceArea(
        "",
        sum((face.gross for face in faces), mockup),
        sum((face.openings for face in faces), Fraction(0)),
        sum((face.joints or Fraction(0) for face in faces), Fraction(0)),
        sum((face.sides for face in faces), Fraction(0)),
        sum((face.returns for face in faces), Fraction(0)),
    )
    return ("Total", *_line(context, whole)[1:])


def _tell(context: DocumentContext, square_meters: Fraction) -> DisplayValue:
    """The figure of an area; its unit stands in the head."""
    return bare(context, tell_summed(context, square_meters))
