"""The day by which an answer is needed, from the dates of schedule and contract."""

import datetime
from collections.abc import Iterator

from specgen.computing.calendars import find_work_days
from specgen.documents.context import DocumentContext
from specgen.documents.views.reply_dates import BEFORE_SUBMITTAL, list_dates
from specgen.model.calendar import WorkDays
from specgen.model.typed_views import root_of


def find_due(context: DocumentContext, order: int) -> datetime.date | None:
    """The date of the first stage that does not begin before the work of this order; None where none is dated."""
    dates = context.remember(_list_days)
    return min((day for at, day in dates if at >= order), default=None)


def _list_days(context: DocumentContext) -> tuple[tuple[int, datetime.date], ...]:
    return (*list_dates(context), *_find_submission(context))


def _find_submission(context: DocumentContext) -> Iterator[tuple[int, datetime.date]]:
    """The last day on which the package may go in for its review to end before the mockup, where no day is planned."""
    project = context.project
    days, kind = project.get(("contract", "review_days")), project.get(("contract", "review_day_kind"))
    mockup = project.get(("mockup", "planned_on"))
    if project.get(("schedule", "submit_on")) is not None or days is None or kind is None or mockup is None:
        return
    worked = find_work_days(root_of(project.root())) if kind == "working" else WorkDays(frozenset())
    last, drafted = worked.count_back(mockup, days), project.get(("package", "date"))
    if drafted is None or last > drafted:
        yield BEFORE_SUBMITTAL, last
