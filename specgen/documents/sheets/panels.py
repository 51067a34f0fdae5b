"""The panel list of the layout in force: a row for each panel, its lengths as numbers."""

from specgen.documents.context import DocumentContext
from specgen.documents.layouts import list_laid_out
from specgen.laying_out.lists import list_unit, panel_rows
from specgen.model.sheet import Sheet, SheetColumn

DOCUMENT, ORDER = "D07", 40
_MARKS = ("Elevation", "Panel")
_LENGTHS = ("From left", "From base", "Width", "Height", "Least side")


def make_sheet(context: DocumentContext) -> Sheet | None:
    """One row for each panel; None where no elevation is laid out."""
    layouts = list_laid_out(context)
    if not layouts:
        return None
    unit = list_unit(context.first)
    columns = (
        *(SheetColumn(title, 14) for title in _MARKS),
        *(SheetColumn(f"{title}, {unit}", 14, "number") for title in _LENGTHS),
        SheetColumn(f"Net area, sq {unit}", 16, "number"),
    )
    return Sheet("Panel list", columns, tuple(map(tuple, panel_rows(layouts, context.first))), "No panels")
