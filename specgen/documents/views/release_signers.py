"""Who signs for hold points, by role, and of which elevation a sheet is where each has its own."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import choose_member, make_blank
from specgen.documents.views.point_releases import find_faces, list_signers, name_role
from specgen.reading.records.row_names import SHEET, SIGNERS


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each role, before them the elevation of the sheet."""
    lines: list[tuple[Any, ...]] = [
        (f"{name_role(role)}, name, firm", make_blank(f"{name_role(role)}, name, firm", "inspection.by", SIGNERS, role))
        for role in list_signers(context)
    ]
    if find_faces(context) == ("",):
        face = choose_member(context, "elevations", "inspection.elevation", SHEET, "Elevation")
        lines.insert(0, ("Elevation", face))
    return TableView(("Sheet", "Entry"), tuple(lines), (20, 80))
