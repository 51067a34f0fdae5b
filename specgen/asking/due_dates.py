"""The day by which an answer is needed, from the dates of schedule and contract."""

import datetime
from collections.abc import Iterator

from specgen.documents.context import DocumentContext
from specgen.documents.submission import find_last_submission
from specgen.documents.views.reply_dates import BEFORE_SUBMITTAL, list_dates


def find_due(context: DocumentContext, order: int) -> datetime.date | None:
    """The date of the first stage that does not begin before the work of this order; None where none is dated."""
    dates = context.remember(_list_days)
    return min((day for at, day in dates if at >= order), default=None)


def _list_days(context: DocumentContext) -> tuple[tuple[int, datetime.date], ...]:
    return (*list_dates(context), *_find_submission(context))


def _find_submission(context: DocumentContext) -> Iterator[tuple[int, datetime.date]]:
    """The last day on which the package may go in for its review to end before the mockup, where no day is planned."""
    last = find_last_submission(context)
    if last is None or context.project.get(("schedule", "submit_on")) is not None:
        return
    drafted = context.project.get(("package", "date"))
    if drafted is None or last > drafted:
        yield BEFORE_SUBMITTAL, last
