"""The day by which an answer is needed, from the dates of schedule and contract."""

import datetime
from collections.abc import Iterator

from specgen.computing.calendars import find_work_days
from specgen.documents.context import DocumentContext
from specgen.documents.views._asked import START, SUBMITTAL, find_last
from specgen.model.calendar import WorkDays
from specgen.model.field import Path
from specgen.model.typed_views import root_of

# The order of what is needed before the package goes in.
BEFORE_SUBMITTAL = SUBMITTAL[0]
# The field that dates a stage.
DATED_BY: dict[str, Path] = {
    SUBMITTAL[1]: ("schedule", "submit_on"),
    "mockup": ("mockup", "planned_on"),
    START[1]: ("schedule", "work_start"),
}


def find_due(context: DocumentContext, order: int) -> datetime.date | None:
    """The date of the first stage that does not begin before the work of this order; None where none is dated."""
    dates = context.remember(_list_days)
    return min((day for at, day in dates if at >= order), default=None)


def find_date(context: DocumentContext, stage: str) -> datetime.date | None:
    """The date of a stage; None where the project gives none, or one that the date of this draft is past."""
    path = DATED_BY.get(stage)
    given, drafted = context.project.get(path) if path else None, context.project.get(("package", "date"))
    dated = isinstance(given, datetime.date) and (drafted is None or given >= drafted)
    return given if dated else None


def _list_days(context: DocumentContext) -> tuple[tuple[int, datetime.date], ...]:
    """The dates of the stages that have one, each behind the order of its stage."""
    orders = {SUBMITTAL[1]: BEFORE_SUBMITTAL, "mockup": find_last(context, "mockup"), START[1]: START[0]}
    dated = ((order, find_date(context, stage)) for stage, order in orders.items())
    return (*((order, date) for order, date in dated if date is not None), *_find_submission(context))


def _find_submission(context: DocumentContext) -> Iterator[tuple[int, datetime.date]]:
    """The last day on which the package may go in for its review to end before the mockup, where no day is planned."""
    project = context.project
    days, kind = project.get(("contract", "review_days")), project.get(("contract", "review_day_kind"))
    mockup = project.get(("mockup", "planned_on"))
    if project.get(("schedule", "submit_on")) is not None or days is None or kind is None or mockup is None:
        return
    worked = find_work_days(root_of(project.root())) if kind == "working" else WorkDays(frozenset())
    last, drafted = worked.count_back(mockup, days), project.get(("package", "date"))
    if drafted is None or last >= drafted:
        yield BEFORE_SUBMITTAL, last
