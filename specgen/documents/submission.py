"""The days of a package: when it is issued for its review to end before the mockup, and what is due before that."""

import datetime
from functools import partial
from typing import NamedTuple

from specgen.computing.calendars import find_work_days
from specgen.computing.submittal_days import COMPILING, REVIEWING, count_on, read_days
from specgen.documents.context import DocumentContext
from specgen.documents.parties import find_contractor
from specgen.documents.required_documents import list_pending
from specgen.model.calendar import WorkDays
from specgen.model.typed_views import root_of
from specgen.model.value_text import count, long_date, words

_DAY = datetime.timedelta(days=1)


class IssueDays(NamedTuple):
    """The day of issue that the others are counted back from, and what is due before it."""

    issue: datetime.date
    completed: datetime.date  # by which the last reply to this submittal is there, to be checked and written in
    decided: datetime.date  # by which the walls are decided on
    asked: datetime.date  # by which the architect has what the decision needs; `decided` without a time for review
    sent: datetime.date  # by which the contractor has it, to be reviewed and sent on; `asked` without a contractor
    replied: datetime.date  # by which what the decision needs has come in, to be checked and sent


def find_last_submission(context: DocumentContext) -> datetime.date | None:
    """The review time of the contract, longer with deviations, before the planned mockup; None where one is open.

    What is returned is acted on for a working day before the mockup is begun.
    """
    days, mockup = _find_review(context), context.project.get(("mockup", "planned_on"))
    if days is None or mockup is None:
        return None
    returned = find_worked_before(context, find_worked_before(context, mockup))
    return _count_back(context, returned, days)


def find_issue(context: DocumentContext) -> IssueDays | None:
    """The planned day of issue, or the last one where the planned leaves no time for the decision on the walls.

    None where neither is given, or both are past. A set that is no draft yet is dated when it is issued: what it
    lacks is due by then, however short the time.
    """
    planned, last = context.project.get(("schedule", "submit_on")), _find_last_issue(context)
    drafted = context.project.get(("package", "date"))
    for day in filter(None, (planned, last)):
        days = _count_from(context, day)
        if drafted is None or days.replied > drafted:
            return days
    held = planned is not None and not context.draft and planned >= drafted
    return IssueDays(*[planned] * len(IssueDays._fields)) if held else None


def _find_last_issue(context: DocumentContext) -> datetime.date | None:
    """The last day of issue: that of submission, sooner by the contractor's own review where it reviews the set."""
    last = find_last_submission(context)
    return last if last is None or not is_reviewed(context) else _go_back(context, last, REVIEWING)


def is_reviewed(context: DocumentContext) -> bool:
    """Whether the contractor is still to review and sign what is issued."""
    return any(entry.before == "sending" for entry in list_pending(context))


def tell_issue(context: DocumentContext) -> str:
    """` Latest: March 22, 2027 (...).`; behind the planned day, with what a resubmittal does to the mockup."""
    if context.project.value(("package", "purpose")) != "mockup_submittal":
        return ""
    planned, last = context.project.get(("schedule", "submit_on")), _find_last_issue(context)
    told = f" {_tell_planned(context, planned, last)}." if planned is not None else ""
    return f"{told} Latest: {_tell_last(context, last)}. {_tell_again(context)}." if last is not None else told


def _tell_last(context: DocumentContext, issue: datetime.date) -> str:
    """`March 26, 2027; reviewed and sent to the architect by March 29, 2027 (10 working days before the mockup)`."""
    sent, mockup = find_last_submission(context) or issue, long_date(context.project.value(("mockup", "planned_on")))
    before = f"({_tell_length(context, _find_review(context) or 0)}, and one to act on it, before the mockup, {mockup})"
    reviewed = "" if sent == issue else f"; reviewed and sent to the architect by {long_date(sent)}"
    return f"{long_date(issue)}{reviewed} {before}"


def _tell_again(context: DocumentContext) -> str:
    """`If revised and resubmitted: mockup no earlier than May 5, 2027`: corrected, and reviewed by both once more."""
    day = find_worked_before(context, find_worked_before(context, context.project.value(("mockup", "planned_on"))))
    steps = [COMPILING, *([REVIEWING] if is_reviewed(context) else [])]
    day = _count_on(context, day, sum(map(partial(_read_days, context), steps)), working=True)
    again = context.project.get(("contract", "resubmittal_days"))
    days = int(again) if again is not None else _find_review(context) or 0
    day = _count_on(context, day, days, working=_counts_working(context))
    assumed = (
        ""
        if again is not None
        else ", the second review assumed as long as the first until the contract states its days"
    )
    earliest = long_date(_count_on(context, day, 2, working=True))
    return f"If revised and resubmitted: mockup no earlier than {earliest}{assumed}"


def tell_days(context: DocumentContext) -> dict[str, str]:
    """The days of the decision in words, ` by March 15, 2027`, each empty where it is open.

    `replied`, `sent` to whoever sends it on, `asked` of the architect, and `decided`, with its `length`.
    """
    found, days = find_issue(context), _find_review(context)
    if found is None:
        return dict.fromkeys(("replied", "sent", "asked", "decided", "length"), "")
    told = {name: f" by {long_date(getattr(found, name))}" for name in ("replied", "sent", "asked", "decided")}
    return told | {"length": f" ({_tell_length(context, days)})" if days else ""}


def _tell_planned(context: DocumentContext, planned: datetime.date, last: datetime.date | None) -> str:
    """The planned day, and why it cannot be held where it cannot."""
    drafted, days = context.project.get(("package", "date")), _count_from(context, planned)
    if last is not None and planned > last:
        return f"Planned: {long_date(planned)}; too late"
    if drafted is not None and days.replied <= drafted:
        return f"The planned date, {long_date(planned)}, cannot be held"
    return f"Planned: {long_date(planned)}"


def _count_from(context: DocumentContext, issue: datetime.date) -> IssueDays:
    """What is due before an issue: the decision the working day before, its papers as long earlier as they take."""
    days = _find_review(context)
    decided = find_worked_before(context, issue)
    asked = decided if days is None else _count_back(context, decided, days)
    sent = _go_back(context, asked, REVIEWING) if find_contractor(context) else asked
    completed, replied = find_checked_before(context, issue), find_checked_before(context, sent)
    return IssueDays(issue, completed, decided, asked, sent, replied)


def _go_back(context: DocumentContext, day: datetime.date, row: str) -> datetime.date:
    """The working day so many of a row before a working day."""
    return find_work_days(root_of(context.project.root())).count_back(day, _read_days(context, row))


def _read_days(context: DocumentContext, row: str) -> int:
    """The working days of a row."""
    return read_days(root_of(context.project.root()), row)


def _count_back(context: DocumentContext, day: datetime.date, days: int) -> datetime.date:
    """The last working day that leaves so many days of the contract before a day."""
    worked = find_work_days(root_of(context.project.root())) if _counts_working(context) else WorkDays(frozenset())
    return _find_worked(context, worked.count_back(day, days))


def _count_on(context: DocumentContext, day: datetime.date, days: int, *, working: bool) -> datetime.date:
    """The first working day with so many days behind a day."""
    worked = find_work_days(root_of(context.project.root()))
    return worked.find_day(count_on(worked if working else WorkDays(frozenset()), day, days))


def _counts_working(context: DocumentContext) -> bool:
    """Whether the days of the contract are working days."""
    return bool(context.project.get(("contract", "review_day_kind")) == "working")


def find_checked_before(context: DocumentContext, day: datetime.date) -> datetime.date:
    """The last working day on which what comes in can still be checked, and written in or sent, before a day."""
    return _go_back(context, day, COMPILING)


def find_worked_before(context: DocumentContext, day: datetime.date) -> datetime.date:
    """The last working day before a day."""
    return _find_worked(context, day - _DAY)


def _find_worked(context: DocumentContext, day: datetime.date) -> datetime.date:
    """The day itself, or the last working day before it."""
    worked = find_work_days(root_of(context.project.root()))
    while not worked.is_worked(day):
        day -= _DAY
    return day


def _tell_length(context: DocumentContext, days: int) -> str:
    """`10 working days`."""
    return count(days, f"{words(str(context.project.get(('contract', 'review_day_kind'))))} day")


def _find_review(context: DocumentContext) -> int | None:
    """The days of the review that has to end; None while they, or what kind they are, are open."""
    project = context.project
    review = [project.get(("contract", name)) for name in ("review_days", "variation_review_days")]
    given = [int(days) for days in review[: 2 if project.members.get(("deviations",)) else 1] if days is not None]
    known = review[0] is not None and project.get(("contract", "review_day_kind")) is not None
    return max(given) if known else None
