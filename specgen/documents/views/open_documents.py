"""The documents still required, numbered, by the party that owes each and the work that it is needed before."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._asked_rows import group_items, shorten_holds, tell_numbers, tell_step
from specgen.model.block import CheckBox


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """A row for each document, or for the sheets of one manufacturer, below the party and the work."""
    lines: list[tuple[Any, ...]] = []
    first = 1
    for head, groups in group_items(context, lambda item: item.number > 0):
        lines.append(head)
        for step, item in ((group.step, item) for group in groups for item in group.items):
            box, holds = CheckBox(f"{item.text}{tell_step(step)}"), shorten_holds(item.holds)
            lines.append((tell_numbers(first, item.number), box, holds, ""))
            first += item.number
    return TableView(("No.", "Document", "Holds up", "Received, date"), tuple(lines), (8, 59, 23, 10))
