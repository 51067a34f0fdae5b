"""The day by which an answer is needed, from the dates of schedule and contract."""

import datetime
from collections.abc import Iterator

from specgen.documents.context import DocumentContext
from specgen.documents.views.reply_dates import BEFORE_SUBMITTAL, list_dates

_WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_WEEKEND = ("sat", "sun")


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
    last = _count_back(mockup, days, project.get(("schedule", "days_off")) or _WEEKEND if kind == "working" else ())
    drafted = project.get(("package", "date"))
    if last is not None and (drafted is None or last > drafted):
        yield BEFORE_SUBMITTAL, last


def _count_back(day: datetime.date, days: int, off: tuple[str, ...]) -> datetime.date | None:
    """The last day that so many days lie behind, up to another, those off not counted; None where none is worked."""
    if set(_WEEK) <= set(off) or days > (day - datetime.date.min).days:
        return None
    left = days
    while left and day > datetime.date.min:
        left -= _WEEK[day.weekday()] not in off and day.isoformat() not in off
        day -= datetime.timedelta(days=1)
    return None if left else day
