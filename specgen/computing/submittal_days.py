"""What lies before the architect's review of a submittal: the decision on the walls, the contractor's own review."""

import datetime

from specgen.computing.calendars import find_work_days
from specgen.model.calendar import WorkDays
from specgen.model.dates import days_after
from specgen.model.typed_views import Description
from specgen.resolving.find_limit import find_limit

# What the contractor takes to review what it sends on, and the applicator to check and send what came in.
REVIEWING, COMPILING = "submittal.contractor_days", "submittal.compile_days"


def read_days(project: Description, row: str) -> int:
    """The working days of a row."""
    return round(float(find_limit(row, project.project).value))


def count_contractor_days(project: Description) -> int:
    """The working days of the contractor's review to come: none where it has signed, or no contractor is named."""
    signed = project.package.contractor_review.get("signed_on") is not None
    named = project.parties.general_contractor.get("name") is not None
    return read_days(project, REVIEWING) if named and not signed else 0


def find_first_issue(project: Description) -> datetime.date | None:
    """The first day on which a submittal can be issued behind the decision on the walls; None where it does not wait.

    A design draft comes before the decision: what came in, on the next working day at the soonest, is checked and sent,
    reviewed by the contractor and by the architect, and the submittal issued on the working day behind.
    """
    drafted = project.package.get("date")
    if project.package.purpose != "design_draft" or drafted is None:
        return None
    worked, review = find_work_days(project), project.contract.review_days
    prepared = 1 + read_days(project, COMPILING) + count_contractor_days(project)
    day = count_on(worked, drafted, prepared)
    counted = worked if project.contract.review_day_kind == "working" else WorkDays(frozenset())
    return worked.find_day(days_after(count_on(counted, day, review), 1))


def count_on(counted: WorkDays, day: datetime.date, days: int) -> datetime.date:
    """The last of so many days behind a day, of those that count; the day itself for none."""
    return counted.finish(days_after(day, 1), days) if days else day
