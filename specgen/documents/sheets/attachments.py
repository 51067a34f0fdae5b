"""The attachments of the package with their dates, their files, and the items that they answer."""

from specgen.documents.attachments import list_attachments, name_kind, name_material
from specgen.documents.context import DocumentContext
from specgen.documents.members import span_marks
from specgen.documents.register import find_items
from specgen.model.sheet import Sheet, SheetCell, SheetColumn

DOCUMENT, ORDER = "D18", 20
_COLUMNS = (
    SheetColumn("Mark", 10),
    SheetColumn("Title", 40),
    SheetColumn("Kind", 18),
    SheetColumn("Covers", 22),
    SheetColumn("Issued", 12, "date"),
    SheetColumn("Valid through", 12, "date"),
    SheetColumn("Signed", 8),
    SheetColumn("File", 26),
    SheetColumn("Item", 12),
)


def make_sheet(context: DocumentContext) -> Sheet:
    """One row for each attachment, those of a kind together."""
    rows = tuple(_set_row(context, mark) for mark in list_attachments(context))
    return Sheet("Attachments", _COLUMNS, rows, "No attachments")


def _set_row(context: DocumentContext, mark: str) -> tuple[SheetCell, ...]:
    def read(name: str) -> SheetCell:
        value: SheetCell = context.project.get(("attachments", mark, name))
        return value

    kind, file = read("kind"), read("file")
    signed = {True: "yes", False: "no"}.get(bool(read("signed")), "") if read("signed") is not None else None
    covers = ", ".join(map(name_material, context.project.get(("attachments", mark, "covers")) or ()))
    return (
        mark,
        read("title"),
        name_kind(str(kind)) if kind is not None else None,
        covers or None,
        read("issued_on"),
        read("valid_to"),
        signed,
        str(file) if file is not None else None,
        span_marks(find_items(context, mark)) or None,
    )
