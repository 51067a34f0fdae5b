"""What is said of a wall where its verdict is told."""

from specgen.documents.context import DocumentContext
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
    return ", ".join(filter(None, (substrate, wrb, method, words(board or ""))))
