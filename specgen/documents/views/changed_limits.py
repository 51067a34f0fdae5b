"""The limits in force that differ from the set issued before."""

from specgen.documents.changes_words import changes_of, tell_value
from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.changes import FigureChange


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each limit, with the source that it now has."""
    lines = tuple(
        (_name(context, one), tell_value(context, one.old), tell_value(context, one.new), one.about)
        for one in changes_of(context).limits
    )
    return TableView(("Limit", "Was", "Is", "Source"), lines, (34, 14, 14, 38))


def _name(context: DocumentContext, one: FigureChange) -> str:
    """What a limit is about, as the documents say it; its row where it is not known any more."""
    return context.limit(one.name).about if one.name in context.standards.limits else one.name
