"""The index of the package: its documents, and the items of the register that each answers."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.held import list_held
from specgen.documents.transmittal import tell_answered


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each document of the package but the transmittal itself; items where any answers one."""
    held = (entry for entry in list_held(context) if entry.id != "D01")
    lines = tuple((entry.id, entry.title, tell_answered(context, entry.id)) for entry in held)
    if any(answered for _, _, answered in lines):
        return TableView(("Document", "Title", "Register items"), lines, (15, 60, 25))
    return TableView(("Document", "Title"), tuple((name, title) for name, title, _ in lines), (15, 85))
