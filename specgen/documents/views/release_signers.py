"""Who signs for hold points, by role, and of which elevation a sheet is where each has its own."""

from itertools import zip_longest
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._record_blanks import choose_member, make_blank
from specgen.documents.views.point_releases import find_faces, list_signers, name_role
from specgen.reading.records.row_names import SHEET, SIGNERS


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Two entries in a line: the elevation of the sheet, then one for each role."""
    entries: list[tuple[Any, ...]] = []
    if find_faces(context) == ("",):
        entries.append(("Elevation", choose_member(context, "elevations", "inspection.elevation", SHEET, "Elevation")))
    for role in list_signers(context):
        label = f"{name_role(role)}, name, firm"
        entries.append((name_role(role), make_blank(label, "inspection.by", SIGNERS, role)))
    pairs = zip_longest(entries[::2], entries[1::2], fillvalue=("", ""))
    head = ("Sheet, party", "Elevation; name, firm") if entries[0][0] == "Elevation" else ("Party", "Name, firm")
    return TableView(head * 2, tuple((*left, *right) for left, right in pairs), (14, 36) * 2)
