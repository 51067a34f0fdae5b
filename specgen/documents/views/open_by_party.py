"""Every open item by itself: who is asked for it, before which work, and in which subject."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.parties import tell_party
from specgen.documents.views.open_items import list_lines


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each value or document, in the order in which they are needed of each party."""
    lines = tuple((tell_party(context, one.party), one.before, one.subject, one.item) for one in list_lines(context))
    return TableView(("Ask", "Needed before", "Subject", "Value or document"), lines, (22, 16, 14, 48))
