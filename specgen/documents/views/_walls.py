"""What is said of a wall where its verdict is told."""

from specgen.documents.context import DocumentContext
from specgen.documents.members import span_marks
from specgen.documents.wall_areas import list_elevations, tell_gross_area
from specgen.model.field import Path
from specgen.model.finding import Verdict
from specgen.model.value_text import words

SAID = {
    Verdict.YES: "Yes",
    Verdict.WITH_MEASURES: "Yes, with measures",
    Verdict.NO: "No",
    Verdict.NOT_YET_KNOWN: "Not yet known",
}


def describe_build_up(context: DocumentContext, mark: str) -> str:
    """`glass-mat gypsum on wood framing at 16 in, fluid-applied WRB, notched-trowel adhesive, 2 in EPS`."""
    wall = ("walls", mark)
    method = context.display((*wall, "attachment", "method")).text
    barrier = context.project.get((*wall, "wrb", "kind"))
    wrb = "" if barrier in (None, "none") else f"{words(barrier)} WRB"
    undecided = context.judgment.walls[mark].verdict is Verdict.NOT_YET_KNOWN
    substrate = f"{_tell_substrate(context, wall)}{_tell_state(context, wall) if undecided else ''}"
    said = ", ".join(filter(None, (substrate, wrb, method, _tell_board(context, wall))))
    return f"{said}{_tell_place(context, mark)}" if undecided else said


def _tell_substrate(context: DocumentContext, wall: Path) -> str:
    """`glass-mat gypsum on cold-formed steel framing at 16 in`; the framing as far as it is given."""
    substrate = context.display((*wall, "substrate", "kind")).text
    framing, spacing = (*wall, "framing", "kind"), (*wall, "framing", "spacing")
    kind = context.project.get(framing)
    if kind in (None, "none"):
        return substrate
    apart = f" at {context.display(spacing).text}" if context.project.is_given(spacing) else ""
    return f"{substrate} on {words(kind)} framing{apart}"


def _tell_state(context: DocumentContext, wall: Path) -> str:
    """` (90 days old, no faults reported)`: what is given of concrete or masonry that the adhesive is to hold on.

    An age is that at the start of work, where it is dated.
    """
    age, faults = (*wall, "substrate", "age_days"), context.project.get((*wall, "substrate", "condition"))
    at = " at start of work" if context.project.is_given(("schedule", "work_start")) else ""
    told = [f"{context.display(age).text} old{at}"] if context.project.is_given(age) else []
    told += ["no faults reported"] if faults is not None and not faults else []
    return f" ({', '.join(told)})" if told else ""


def _tell_board(context: DocumentContext, wall: Path) -> str:
    """`2-1/2 in EPS`; the kind alone while no thickness is given, and nothing without a board."""
    kind, thickness = context.project.get((*wall, "insulation", "kind")), (*wall, "insulation", "thickness")
    board = words(kind or "")
    return f"{context.display(thickness).text} {board}" if board and context.project.is_given(thickness) else board


def _tell_place(context: DocumentContext, mark: str) -> str:
    """`; on E1, E2, 1360 sq ft gross`: where a wall still to be decided on stands; no area while a size is missing."""
    mine, area = list_elevations(context, mark), tell_gross_area(context, mark)
    return f"; on {span_marks(mine)}{f', {area} gross' if area else ''}" if mine else ""
