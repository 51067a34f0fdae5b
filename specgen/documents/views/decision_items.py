"""What to ask of whom before the decision on the walls: one item a line, with room for its answer."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.parties import name_party, name_role
from specgen.documents.views._asked import DECISION
from specgen.documents.views._requests import list_requests
from specgen.model.block import CheckBox


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each value or document, those of a party together."""
    told: set[str] = set()
    lines = []
    for request in list_requests(context):
        if request.order > DECISION[0]:
            continue
        before = f", before {request.before}" if request.before != DECISION[1] else ""
        for item in request.items:
            party = name_role(request.party) if request.party in told else name_party(context, request.party)
            told.add(request.party)
            lines.append((party, CheckBox(f"{item}{before}"), ""))
    return TableView(("Ask", "Value or document", "Answer, date"), tuple(lines), (22, 48, 30))
