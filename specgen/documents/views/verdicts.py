"""The verdict of each wall, and what it rests on."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.finding import Verdict, WallJudgment
from specgen.model.value_text import words

_SAID = {
    Verdict.YES: "Yes",
    Verdict.WITH_MEASURES: "Yes, with measures",
    Verdict.NO: "No",
    Verdict.NOT_YET_KNOWN: "Not yet known",
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Wall, build-up, verdict, and the clauses that decide it."""
    lines = []
    for mark, judged in context.judgment.walls.items():
        wall = ("walls", mark)
        parts = [context.display((*wall, *path)).text for path in (("substrate", "kind"), ("attachment", "method"))]
        board = context.project.get((*wall, "insulation", "kind"))
        build_up = ", ".join([*parts, words(board or "")]).strip(", ")
        lines.append((mark, build_up, _SAID[judged.verdict], _tell_reasons(judged) or "no clause fired"))
    return TableView(("Wall", "Build-up", "May take the finish", "Decided by"), tuple(lines), (10, 36, 18, 36))


def _tell_reasons(judged: WallJudgment) -> str:
    """The clauses that fired, and what the wall waits for."""
    reasons = (
        ", ".join(judged.deciding),
        f"waiting for documents: {', '.join(judged.documents)}" if judged.documents else "",
        f"waiting for data: {', '.join(judged.undecided)}" if judged.undecided else "",
    )
    return "; ".join(filter(None, reasons))
