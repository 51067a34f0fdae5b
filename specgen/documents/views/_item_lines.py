"""One item a line, with a box and room for its answer: what is asked of whom before some work."""

from collections.abc import Callable

from specgen.documents.context import DocumentContext, TableView
from specgen.documents.parties import is_unnamed, name_party, name_role
from specgen.documents.views._asked import DECISION
from specgen.documents.views._requests import Request, list_requests
from specgen.model.block import CheckBox

_WIDTHS = (19, 60, 21)


def set_items(context: DocumentContext, wanted: Callable[[Request], bool], stage: str) -> TableView:
    """A line for each item of the requests wanted; what is due before another work than the stage says so."""
    requests = list_requests(context)
    # A name still to be given is asked for once, in the first list.
    named = {request.party for request in requests if request.order <= DECISION[0]}
    lines, told = [], set[str]()
    for request in filter(wanted, requests):
        before = f", before {request.before}" if request.before != stage else ""
        for item in request.items:
            unnamed = request.party in named and is_unnamed(context, request.party)
            again = request.party in told or (stage != DECISION[1] and unnamed)
            party = [name_role(request.party)] if again else name_party(context, request.party)
            told.add(request.party)
            lines.append((party, CheckBox(f"{item}{before}"), ""))
    return TableView(("Ask", "Value or document", "Answer, date"), tuple(lines), _WIDTHS)
