"""The attachments of the package, as dividers and the register name them."""

from typing import Any

from specgen.documents.attachments import list_attachments, name_kind, name_material, tell_state
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import span_marks
from specgen.documents.register import find_items


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each attachment, those of a kind together, those of side files included."""
    header = ("Mark", "Title", "Kind", "Covers", "Date", "Status; age at award", "Item")
    return TableView(
        header, tuple(_set_row(context, mark) for mark in list_attachments(context)), (7, 26, 12, 15, 14, 20, 6)
    )


def _set_row(context: DocumentContext, mark: str) -> tuple[Any, ...]:
    at = ("attachments", mark)
    title, kind, issued = (context.display((*at, name)) for name in ("title", "kind", "issued_on"))
    expires = context.project.is_given((*at, "valid_to"))
    dates = [issued, ", valid through ", context.display((*at, "valid_to"))] if expires else issued
    answered = span_marks(find_items(context, mark))
    covered = context.project.get((*at, "covers"))
    covers = ", ".join(map(name_material, covered)) if covered else context.display((*at, "covers"))
    said = kind if kind.open else name_kind(str(kind.raw))
    return (mark, title, said, covers, dates, tell_state(context, mark), answered)
