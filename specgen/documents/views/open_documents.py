"""The documents still required, numbered, by the party that owes each and the work that it is needed before."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._asked_rows import group_items, shorten_holds, tell_numbers, tell_step
from specgen.documents.views._requests import Item
from specgen.model.block import CheckBox


def find_numbers(context: DocumentContext) -> dict[str, str]:
    """The numbers of the documents, `7 to 9` of sheets that stand in one row, by what is asked for."""
    numbers: dict[str, str] = {}
    first = 1
    for _, groups in group_items(context, _is_document):
        for item in (item for group in groups for item in group.items):
            numbers[item.text] = tell_numbers(first, item.number)
            first += item.number
    return numbers


def _is_document(item: Item) -> bool:
    return item.number > 0


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """A row for each document, or for the sheets of one manufacturer, below the party and the work."""
    lines: list[tuple[Any, ...]] = []
    numbers = find_numbers(context)
    for head, groups in group_items(context, _is_document):
        lines.append(head)
        for step, item in ((group.step, item) for group in groups for item in group.items):
            box, holds = CheckBox(f"{item.text}{tell_step(step)}"), shorten_holds(item.holds)
            lines.append((numbers[item.text], box, holds, ""))
    return TableView(("No.", "Document", "Holds up", "Received"), tuple(lines), (8, 59, 23, 10))
