"""The items of a government contract by their submittal descriptions, SD-01 to SD-11."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.members import span_marks
from specgen.documents.register import ITEMS, find_documents, is_government, make_register
from specgen.documents.transmittal import DESCRIPTIONS, tell_variation
from specgen.model.block import Blank

_HEADER = (
    "Item",
    "SD number and type",
    "Description of item",
    "Paragraph",
    "Class",
    "Answered by",
    "Variation",
    "Action",
)
_WIDTHS = (7, 17, 22, 12, 7, 15, 10, 10)


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each item, by SD number; none under the procedure of an architect's review."""
    if not is_government(context):
        return TableView(_HEADER, (), _WIDTHS)
    marks = [row.mark for row in make_register(context).rows]
    marks.sort(key=lambda mark: str(context.project.get((*ITEMS, mark, "sd_type")) or "SD-99"))
    return TableView(_HEADER, tuple(_set_row(context, mark) for mark in marks), _WIDTHS)


def _set_row(context: DocumentContext, mark: str) -> tuple[Any, ...]:
    number, title, section, paragraph, classified = (
        context.display((*ITEMS, mark, name)) for name in ("sd_type", "title", "section", "paragraph", "classification")
    )
    attached = [linked.mark for linked in context.project.get((*ITEMS, mark, "attachments")) or ()]
    answers = filter(None, (span_marks(find_documents(context, mark)), span_marks(attached)))
    return (
        mark,
        [number, *([f" {named}"] if (named := DESCRIPTIONS.get(str(number))) else [])],
        title,
        [section, ", ", paragraph],
        classified,
        ", ".join(answers) or "–",
        tell_variation(context, mark),
        Blank(f"Action, item {mark}"),
    )
