"""The index of the package: its documents, and the items of the register that each answers."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.held import list_held
from specgen.documents.transmittal import tell_answered

_ITSELF, _NOT_USED = "D01", "Not used in this submittal"
_FOR_RECORD = "for record"  # answers no item, so that no action is asked for
Row = tuple[str, str, str]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each document of the package but the transmittal itself; items where any answers one."""
    lines: list[Row] = [
        (entry.id, entry.title, tell_answered(context, entry.id)) for entry in list_held(context) if entry.id != _ITSELF
    ]
    if any(answered for _, _, answered in lines):
        lines = [(name, title, items or _FOR_RECORD) for name, title, items in lines]
        return TableView(("Document", "Title", "Register items"), tuple(_fill_gaps(context, lines)), (15, 60, 25))
    told = tuple((name, title) for name, title, _ in _fill_gaps(context, lines))
    return TableView(("Document", "Title"), told, (15, 85))


def _fill_gaps(context: DocumentContext, lines: list[Row]) -> list[Row]:
    """The rows with one for each number left out between others, so that nobody looks for a page that was lost."""
    if context.is_marked:
        return lines
    by_number = {int(name[1:]): (name, title, answered) for name, title, answered in lines}
    every = range(int(_ITSELF[1:]) + 1, max(by_number, default=0) + 1)
    return [by_number.get(number, (f"D{number:02}", _NOT_USED, "")) for number in every]
