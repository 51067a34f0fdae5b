"""The date by which each stage has its answers: that of the project, or a blank."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.due_dates import BEFORE_SUBMITTAL, DATED_BY, find_due
from specgen.documents.views._asked import DECISION
from specgen.documents.views._requests import list_requests
from specgen.model.block import Blank
from specgen.model.value_text import long_date

_LATER = "each later step"
_HEAD = 15


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row of dates below the stages before which something is asked, the steps of the work in one."""
    stages = sorted({(request.order, request.before): None for request in list_requests(context)})
    dated = [(order, before) for order, before in stages if order <= BEFORE_SUBMITTAL or before in DATED_BY]
    told = [(before, _tell_date(context, order, before)) for order, before in dated]
    told += [(_LATER, Blank(f"Reply by, before {_LATER}", "date"))] if len(dated) < len(stages) else []
    if not told:
        return TableView((), (), ())
    heads = ("Needed before", *(f"{stage[:1].upper()}{stage[1:]}" for stage, _ in told))
    share = (100 - _HEAD) // len(told)
    widths = (100 - share * len(told), *([share] * len(told)))
    return TableView(heads, (("Reply by", *(date for _, date in told)),), widths)


def _tell_date(context: DocumentContext, order: int, before: str) -> object:
    """The date of a stage, for the decision that of the first dated stage behind it; a blank where none is dated.

    What comes before the decision is agreed on site.
    """
    due = find_due(context, order) if order >= DECISION[0] else None
    return long_date(due) if due else Blank(f"Reply by, before {before}", "date")
