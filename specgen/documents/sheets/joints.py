"""The joint list of the layout in force: a row for each run of an aesthetic or other joint, its lengths as numbers."""

from specgen.documents.context import DocumentContext
from specgen.documents.layouts import list_laid_out
from specgen.laying_out.lists import joint_rows, list_unit
from specgen.model.sheet import Sheet, SheetColumn
from specgen.model.value_text import words

DOCUMENT, ORDER = "D07", 50
_MARKS = ("Elevation", "Joint", "Kind")
_LENGTHS = ("Start from left", "Start from base", "End from left", "End from base", "Length")
_KIND = _MARKS.index("Kind")


def make_sheet(context: DocumentContext) -> Sheet | None:
    """One row for each run of a joint; None where no elevation is laid out."""
    layouts = list_laid_out(context)
    if not layouts:
        return None
    unit = list_unit(context.first)
    columns = (
        *(SheetColumn(title, 14) for title in _MARKS),
        *(SheetColumn(f"{title}, {unit}", 16, "number") for title in _LENGTHS),
    )
    rows = tuple(
        (*row[:_KIND], words(str(row[_KIND])), *row[_KIND + 1 :]) for row in joint_rows(layouts, context.first)
    )
    return Sheet("Joint list", columns, rows, "No joints")
