"""What is looked at each year, with the places of the project, and what is done where something is found."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.marks import list_marks, name_member
from specgen.documents.members import span_marks

_WATER = {"parapet": "metal cap", "roof_end": "kick-out flashing", "roof_below": "roof flashing"}
_LISTED = 8  # so many places are named


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each part of the wall."""
    return TableView(("Inspect", "For", "Measure"), tuple(_lines(context)), (34, 33, 33))


def _lines(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    faces = [name_member(context, "elevations", mark) for mark in list_marks(context, "elevations")]
    named = f": {', '.join(faces)}" if 0 < len(faces) <= _LISTED else ""
    yield f"Finish{named}", "stains, scratches, cracks, dents", "class the damage; repair before winter"
    marks = list_marks(context, "joints")
    if marks:
        yield (
            f"Sealant {'joints' if len(marks) > 1 else 'joint'} {span_marks(marks)}",
            "splits, loss of bond, hardening",
            "renew the joint",
        )
    details = _name_details(context)
    yield (
        f"Flashings, sills, {', '.join(details)}" if details else "Flashings and sills",
        "loose seams, blocked weeps, water stains below",
        "clear and refasten; find the source of stains",
    )
    yield from _ledges(context)
    if any(
        context.project.get(("walls", w, "drainage", "kind")) not in (None, "none")
        for w in list_marks(context, "walls")
    ):
        yield "Drainage outlets and weeps", "dirt, insects, sealant over them", "open them; never seal them"
    yield "Base of the walls", _clearances(context), "remove soil, plants, and snow from the face"
    yield from _feet_over_roofs(context)
    if pipes := _name_kind(context, "penetration"):
        yield pipes, "open joints around the collar", "renew the joint"


def _ledges(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    """Ledges of board, which have neither seams nor weeps."""
    if ledges := _name_kind(context, "ledge"):
        marks = (m for m in list_marks(context, "details") if context.project.get(("details", m, "kind")) == "ledge")
        caps = ", loose caps" if any(context.project.get(("details", m, "cap")) for m in marks) else ""
        yield ledges, f"cracks, standing water{caps}", "class the damage; repair before winter"


def _name_kind(context: DocumentContext, kind: str) -> str:
    """`Penetrations PN1, PN2`: the details of a kind; empty where there is none."""
    marks = [m for m in list_marks(context, "details") if context.project.get(("details", m, "kind")) == kind]
    return f"{kind.capitalize()}{'s' if len(marks) > 1 else ''} {span_marks(marks)}" if marks else ""


def _feet_over_roofs(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    """The gap that the board keeps to each roof below it."""
    for mark in list_marks(context, "details"):
        clearance = context.display(("details", mark, "clearance"))
        if context.project.get(("details", mark, "kind")) == "roof_below" and not clearance.open:
            yield f"Foot of the wall over the roof, {mark}", ["clearance under ", clearance], "clear leaves and snow"


def _name_details(context: DocumentContext) -> list[str]:
    """`metal caps PA1 to PA3`: the places where water is led off, by their marks."""
    found: dict[str, list[str]] = {}
    for mark in list_marks(context, "details"):
        kind = str(context.project.get(("details", mark, "kind")))
        if kind in _WATER:
            found.setdefault(_WATER[kind], []).append(mark)
    return [f"{name}{'s' if len(marks) > 1 else ''} {span_marks(marks)}" for name, marks in found.items()]


def _clearances(context: DocumentContext) -> list[Any]:
    """The clearance above grade of the elevations, or the least ones."""
    of_text: dict[str, tuple[Any, list[str]]] = {}
    for mark in list_marks(context, "elevations"):
        clearance = context.display(("elevations", mark, "grade_clearance"))
        if not clearance.open:
            of_text.setdefault(clearance.text, (clearance, []))[1].append(mark)
    if not of_text:
        soil, paving = context.limit("grade.clearance_soil"), context.limit("grade.clearance")
        return ["clearance under ", soil, " above soil or ", paving, " above paving"]
    told: list[Any] = ["clearance under "]
    for number, (clearance, marks) in enumerate(of_text.values()):
        told += [", " if number else "", clearance, f" ({', '.join(marks)})" if len(of_text) > 1 else ""]
    return told
