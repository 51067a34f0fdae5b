"""The last day on which a package may go in for its review to end before the mockup."""

import datetime

from specgen.computing.calendars import find_work_days
from specgen.documents.context import DocumentContext
from specgen.model.calendar import WorkDays
from specgen.model.typed_views import root_of
from specgen.model.value_text import long_date, words


def find_last_submission(context: DocumentContext) -> datetime.date | None:
    """The review time of the contract, longer with deviations, before the planned mockup; None where one is open."""
    project = context.project
    days, kind = _find_review(context), project.get(("contract", "review_day_kind"))
    mockup = project.get(("mockup", "planned_on"))
    if days is None or kind is None or mockup is None:
        return None
    worked = find_work_days(root_of(project.root())) if kind == "working" else WorkDays(frozenset())
    return worked.count_back(mockup, days)


def tell_last_submission(context: DocumentContext) -> str:
    """` as planned, February 15, 2027, and no later than March 29, 2027 (10 working days ...)`; empty where open."""
    last, planned = find_last_submission(context), context.project.get(("schedule", "submit_on"))
    if last is None or context.project.value(("package", "purpose")) != "mockup_submittal":
        return ""
    days, kind = _find_review(context), words(str(context.project.get(("contract", "review_day_kind"))))
    mockup = long_date(context.project.value(("mockup", "planned_on")))
    said = f"no later than {long_date(last)} ({days} {kind} day{'' if days == 1 else 's'} before the mockup, {mockup})"
    if planned is None:
        return f" {said}"
    if planned > last:
        return f" {said}, not as planned, {long_date(planned)}"
    return f" as planned, {long_date(planned)}, and {said}"


def _find_review(context: DocumentContext) -> int | None:
    """The days of the review that has to end."""
    project = context.project
    review = [project.get(("contract", name)) for name in ("review_days", "variation_review_days")]
    given = [int(days) for days in review[: 2 if project.members.get(("deviations",)) else 1] if days is not None]
    return max(given) if review[0] is not None else None
