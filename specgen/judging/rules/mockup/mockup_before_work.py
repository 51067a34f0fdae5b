"""The mockup is finished before the work starts.

Why: the accepted mockup is the standard the wall is judged by. Work that begins before it has
nothing to be held against.

passes
    mockup: {planned_on: 2027-03-01, duration_days: 14}
    schedule: {work_start: 2027-03-15}
fails MOC-01a at mockup.planned_on
    mockup: {planned_on: 2027-03-01, duration_days: 14}
    schedule: {work_start: 2027-03-08}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.model.dates import days_after
from specgen.quantities.comparison import more

RULE = Rule(
    "MOC-01",
    "Mockup before the work",
    remedy="Plan it first; it is the standard of approval.",
    steps="mockup",
    documents="D09 D14",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The mockup ends on {found}; work starts on {wanted}.",
    needs="schedule.work_start mockup.duration_days mockup.planned_on",
    basis="practice",
)
def ends_after_start(project: Any) -> Iterator[Found]:
    """The mockup ends after the work has begun."""
    end = days_after(project.mockup.planned_on, project.mockup.duration_days)
    if more(end, project.schedule.work_start):
        yield found(end, wanted=project.schedule.work_start)
