"""What to ask of whom before the decision on the walls: one item a line, with room for its answer."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._asked import DECISION
from specgen.documents.views._item_lines import set_items


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each value or document, those of a party together."""
    return set_items(context, lambda request: request.order <= DECISION[0], DECISION[1])
