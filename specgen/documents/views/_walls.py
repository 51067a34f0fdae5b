"""What is said of a wall where its verdict is told."""

from fractions import Fraction
from typing import Any, cast

from specgen.computing.face_area import gross_area
from specgen.documents.context import DocumentContext
from specgen.documents.marks import list_marks
from specgen.documents.members import span_marks
from specgen.model.absence import Absent
from specgen.model.finding import Verdict
from specgen.model.value_text import words
from specgen.quantities.quantity import Quantity, round_quantity

SAID = {
    Verdict.YES: "Yes",
    Verdict.WITH_MEASURES: "Yes, with measures",
    Verdict.NO: "No",
    Verdict.NOT_YET_KNOWN: "Not yet known",
}


def describe_build_up(context: DocumentContext, mark: str) -> str:
    """`glass mat gypsum, fluid-applied WRB, notched-trowel adhesive, EPS`."""
    wall = ("walls", mark)
    substrate, method = (
        context.display((*wall, *path)).text for path in (("substrate", "kind"), ("attachment", "method"))
    )
    barrier, board = (context.project.get((*wall, *path)) for path in (("wrb", "kind"), ("insulation", "kind")))
    wrb = "" if barrier in (None, "none") else f"{words(barrier)} WRB"
    said = ", ".join(filter(None, (substrate, wrb, method, words(board or ""))))
    undecided = context.judgment.walls[mark].verdict is Verdict.NOT_YET_KNOWN
    return f"{said}{_tell_place(context, mark)}" if undecided else said


def tell_gross_area(context: DocumentContext, mark: str) -> str:
    """`1360 sq ft`, of the elevations of a wall, openings not taken off; empty while a size is missing."""
    elevations = cast(Any, context.project.root()).elevations
    mine = _list_elevations(context, mark)
    try:
        amount = sum((gross_area(elevations[one]) for one in mine), start=Fraction(0))
    except Absent:
        return ""
    unit = "ft2" if context.first == "ip" else "m2"
    area = round_quantity(Quantity.of(Quantity(amount, "area", "m2").to(unit), unit))
    return context.text(area, None) if mine else ""


def _tell_place(context: DocumentContext, mark: str) -> str:
    """`; on E1, E2, 1360 sq ft gross`: where a wall still to be decided on stands; no area while a size is missing."""
    mine, area = _list_elevations(context, mark), tell_gross_area(context, mark)
    return f"; on {span_marks(mine)}{f', {area} gross' if area else ''}" if mine else ""


def _list_elevations(context: DocumentContext, mark: str) -> list[str]:
    """The marks of the elevations of a wall."""
    linked = {one: context.project.get(("elevations", one, "wall")) for one in list_marks(context, "elevations")}
    return [one for one, wall in linked.items() if wall is not None and wall.mark == mark]
