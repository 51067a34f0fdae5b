"""The attachments in short: the marks of each kind, as the index lists them."""

from specgen.documents.attachments import list_attachments, name_kind
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import span_marks
from specgen.documents.register import find_items


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each kind of attachment, in the order of the project."""
    by_kind: dict[str, list[str]] = {}
    for mark in list_attachments(context):
        by_kind.setdefault(str(context.project.get(("attachments", mark, "kind")) or ""), []).append(mark)
    lines = tuple(
        (
            name_kind(kind) if kind else context.ask(("attachments", marks[0], "kind")),
            str(len(marks)),
            span_marks(marks),
            span_marks(dict.fromkeys(item for mark in marks for item in find_items(context, mark))),
        )
        for kind, marks in by_kind.items()
    )
    return TableView(("Kind", "Number", "Attachments", "Register items"), lines, (24, 10, 41, 25))
