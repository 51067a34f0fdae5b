"""What is said of a wall where its verdict is told."""

from specgen.documents.context import DocumentContext
from specgen.documents.members import span_marks
from specgen.documents.wall_areas import list_elevations, tell_gross_area
from specgen.model.finding import Verdict
from specgen.model.value_text import words

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


def _tell_place(context: DocumentContext, mark: str) -> str:
    """`; on E1, E2, 1360 sq ft gross`: where a wall still to be decided on stands; no area while a size is missing."""
    mine, area = list_elevations(context, mark), tell_gross_area(context, mark)
    return f"; on {span_marks(mine)}{f', {area} gross' if area else ''}" if mine else ""
