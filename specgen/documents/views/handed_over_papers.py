"""The papers for whoever keeps the building: warranties, instructions, data sheets, as they are attached."""

from specgen.documents.attachments import list_attachments, name_kind, tell_state
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView

_KINDS = ("warranty", "instructions", "data_sheet", "sds")


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each attachment of these kinds, the warranties first."""
    project = context.project
    of_kind: dict[str, list[str]] = {kind: [] for kind in _KINDS}
    for mark in list_attachments(context):
        of_kind.get(str(project.get(("attachments", mark, "kind"))), []).append(mark)
    lines = tuple(
        (name_kind(kind), mark, context.display(("attachments", mark, "title")), tell_state(context, mark))
        for kind, marks in of_kind.items()
        for mark in marks
    )
    return TableView(("Kind", "Attachment", "Title", "State"), lines, (18, 11, 46, 25))
