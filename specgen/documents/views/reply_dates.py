"""The date by which each stage has its answers: the project's own, or a blank."""

import datetime

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._asked import START, SUBMITTAL, find_last
from specgen.documents.views._requests import list_requests
from specgen.model.block import Blank
from specgen.model.field import Path

# The order of what is needed before the package goes in.
BEFORE_SUBMITTAL = SUBMITTAL[0]
_LATER = "each later step"
_HEAD = 15
# The field that dates a stage.
_DATES: dict[str, Path] = {
    SUBMITTAL[1]: ("schedule", "submit_on"),
    "mockup": ("mockup", "planned_on"),
    START[1]: ("schedule", "work_start"),
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row of dates below the stages before which something is asked, the steps of the work in one."""
    stages = {(request.order, request.before): None for request in list_requests(context)}
    first = [before for order, before in sorted(stages) if order <= SUBMITTAL[0] or before in _DATES]
    told = [*first, *([_LATER] if len(first) < len(stages) else [])]
    if not told:
        return TableView((), (), ())
    heads = ("Needed before", *(f"{stage[:1].upper()}{stage[1:]}" for stage in told))
    share = (100 - _HEAD) // len(told)
    widths = (100 - share * len(told), *([share] * len(told)))
    return TableView(heads, (("Reply by", *(_tell_date(context, stage) for stage in told)),), widths)


def find_date(context: DocumentContext, stage: str) -> datetime.date | None:
    """The date of a stage; None where the project gives none, or none after this draft."""
    path = _DATES.get(stage)
    given, drafted = context.project.get(path) if path else None, context.project.get(("package", "date"))
    dated = isinstance(given, datetime.date) and (drafted is None or given > drafted)
    return given if dated else None


def list_dates(context: DocumentContext) -> tuple[tuple[int, datetime.date], ...]:
    """The dates of the stages that have one, each behind the order of its stage."""
    orders = {SUBMITTAL[1]: BEFORE_SUBMITTAL, "mockup": find_last(context, "mockup"), START[1]: START[0]}
    dated = ((order, find_date(context, stage)) for stage, order in orders.items())
    return tuple((order, date) for order, date in dated if date is not None)


def _tell_date(context: DocumentContext, stage: str) -> object:
    """The date of a stage as it prints, or a blank."""
    if find_date(context, stage) is None:
        return Blank(f"Reply by, before {stage}", "date")
    return context.display(_DATES[stage])
