"""What to ask of whom for the work that follows this submittal, by subject where there is much of it."""

from collections.abc import Iterable
from itertools import groupby
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.parties import is_unnamed, name_party, name_role
from specgen.documents.views._asked import SUBMITTAL
from specgen.documents.views._requests import Request, list_requests
from specgen.model.block import CheckBox

# So many items of a party are read at a glance.
_GLANCE = 6


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each party and date, or for each subject of it."""
    lines = []
    for party, mine in groupby(_list_later(context), key=lambda request: request.party):
        for _, same in groupby(mine, key=lambda request: request.before):
            lines += [(party, *cells) for cells in _cells(list(same))]
    # A name still to be given is asked for once, in the list before this one.
    named = {request.party for request in list_requests(context) if request.order <= SUBMITTAL[0]}
    told: set[str] = set()
    cells: list[tuple[Any, ...]] = []
    for party, before, items in lines:
        first = [name_role(party)] if party in named and is_unnamed(context, party) else name_party(context, party)
        cells.append((name_role(party) if party in told else first, before, items, ""))
        told.add(party)
    return TableView(("Ask", "Needed before", "Value or document", "Answer, date"), tuple(cells), (19, 13, 50, 18))


def _list_later(context: DocumentContext) -> list[Request]:
    return [request for request in list_requests(context) if request.order > SUBMITTAL[0]]


def _cells(same: list[Request]) -> list[tuple[str, list[Any]]]:
    """What is needed before one work: together where it is little, else by subject; each item with its box."""
    if sum(len(request.items) for request in same) <= _GLANCE:
        return [(same[0].before, _set_boxes(item for request in same for item in request.items))]
    return [(request.before, [f"{request.subject}: ", *_set_boxes(request.items)]) for request in same]


def _set_boxes(items: Iterable[str]) -> list[Any]:
    """The items in one cell, each with its box; a question ends with its own mark."""
    cell: list[Any] = []
    for item in items:
        if cell:
            cell.append(" " if str(cell[-1].label).endswith("?") else "; ")
        cell.append(CheckBox(item))
    return cell
