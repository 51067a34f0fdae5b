"""The deviations of a project: what is required, what is proposed, and whether it is approved."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.deviations import name_paragraphs, tell_approval


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each deviation."""
    project = context.project
    lines = []
    for mark in project.members.get(("deviations",), ()):
        at = ("deviations", mark)
        shown = [context.display((*at, name)) for name in ("demanded", "proposed", "reason")]
        answered = name_paragraphs(project, mark) or context.display((*at, "answers"))
        lines.append((mark, answered, *shown, tell_approval(project, mark)))
    header = ("No.", "Paragraph", "Required", "Proposed", "Reason", "Status")
    return TableView(header, tuple(lines), (7, 15, 19, 19, 24, 16))
