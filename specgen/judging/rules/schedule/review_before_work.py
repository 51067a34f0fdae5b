"""Review, sample color and mockup can be over before the work starts.

Why: nobody may go on the wall before the mockup is accepted, and the mockup waits for the review and for its color.
A start that is planned earlier is an empty scaffold.

passes
    schedule: {submit_on: 2027-03-01, work_start: 2027-04-05}
    contract: {review_days: 14, review_day_kind: calendar}
    colors: {C1: {kind: standard}}
    mockup: {duration_days: 14}
fails SCH-01a at schedule.work_start
    schedule: {submit_on: 2027-03-01, work_start: 2027-03-22}
    contract: {review_days: 14, review_day_kind: calendar}
    colors: {C1: {kind: standard}}
    mockup: {duration_days: 14}
"""

from specgen.judging.rule import STOP, Computed, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.dates import days_after
from specgen.model.typed_views import Description
from specgen.quantities.comparison import less

RULE = Rule(
    "SCH-01",
    "Review and mockup before the work",
    remedy="Submit earlier, or move the start of work behind review, sample color, and mockup.",
    steps="mockup",
    documents="D14",
)


@RULE.test(
    "a",
    STOP,
    "Work is planned for {found}; review and mockup cannot end before {wanted}.",
    at="schedule.work_start",
    basis="computed practice",
)
def starts_too_early(project: Description, earliest_start: Computed) -> Violations:
    """Work is planned for a day before review, sample color and mockup can be over."""
    planned, earliest, submitted = read_all(
        lambda: project.schedule.work_start, earliest_start, lambda: project.schedule.submit_on
    )
    start = days_after(submitted, round(earliest.result))
    if less(planned, start):
        yield violation(planned, wanted=start)
