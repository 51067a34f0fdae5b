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
    """`glass mat gypsum, adhesive, notched trowel, EPS`."""
    wall = ("walls", mark)
    parts = [context.display((*wall, *path)).text for path in (("substrate", "kind"), ("attachment", "method"))]
    board = context.project.get((*wall, "insulation", "kind"))
    return ", ".join([*parts, words(board or "")]).strip(", ")
