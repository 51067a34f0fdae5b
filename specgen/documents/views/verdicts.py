"""The verdict of each wall, and what it rests on."""

from specgen.documents.composing import Composer
from specgen.documents.context import Desk, TableView
from specgen.model.finding import Verdict
from specgen.model.value_text import words

_SAID = {
    Verdict.YES: "Yes",
    Verdict.WITH_MEASURES: "Yes, with measures",
    Verdict.NO: "No",
    Verdict.NOT_YET_KNOWN: "Not yet known",
}


def rows(desk: Desk, composer: Composer) -> TableView:
    """Wall, build-up, verdict, and the clauses that decide it."""
    made = []
    for mark, verdict in desk.judgment.walls.items():
        wall = ("walls", mark)
        parts = [desk.sight.shown((*wall, *path)).text for path in (("substrate", "kind"), ("attachment", "method"))]
        board = desk.sight.project.get((*wall, "insulation", "kind"))
        build_up = ", ".join([*parts, words(board or "")]).strip(", ")
        fired, waiting = desk.judgment.deciding[mark], desk.judgment.undecided[mark]
        told = [", ".join(fired), f"waiting for data: {', '.join(waiting)}" if waiting else ""]
        made.append((mark, build_up, _SAID[verdict], "; ".join(filter(None, told)) or "no clause fired"))
    return TableView(("Wall", "Build-up", "May take the finish", "Decided by"), tuple(made), (10, 36, 18, 36))
