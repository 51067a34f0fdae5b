"""The schedule has days in hand for a second review and for unfit weather.

Why: hardly any set comes back approved at once, and no season is all fit days. A plan without float is late
on its first wet morning.

passes
    contract: {resubmittal_days: 14}
    schedule: {weather_days: 8}
fails SCH-04a at contract.resubmittal_days
    contract: {resubmittal_days: 0}
fails SCH-04b at schedule.weather_days
    schedule: {weather_days: 0}
fails SCH-04c at schedule.work_start
    schedule: {submit_on: 2027-03-01, work_start: 2027-04-05}
    contract: {review_days: 14, review_day_kind: calendar, resubmittal_days: 14}
    colors: {C1: {kind: standard}}
    mockup: {duration_days: 14}
"""

from specgen.computing.mockup_days import require_drying_to_primer
from specgen.judging.rule import CAUTION, Computed, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.dates import days_after
from specgen.model.typed_views import Description

RULE = Rule(
    "SCH-04",
    "Float for a second review and for weather",
    remedy="Allow for a second review and for weather.",
    steps="site_conditions",
    documents="D14",
)

RULE.clause(
    "a",
    CAUTION,
    "The schedule has no float for a second review.",
    when="contract.resubmittal_days = 0",
    basis="review_memory",
    remedy="Add one review period.",
)

RULE.clause(
    "b",
    CAUTION,
    "The schedule has no float for weather.",
    when="schedule.weather_days = 0",
    basis="review_memory",
    remedy="Add the days of the season that are unfit for spraying.",
)


@RULE.test(
    "c",
    CAUTION,
    "Work is planned for {found}; if this set is resubmitted on the day of its return, it can start on {wanted}, and "
    "for each further day a day later.",
    at="schedule.work_start",
    basis="computed practice",
    remedy="Agree with the general contractor and the architect to move the start of work to that day if the set is "
    "returned for resubmittal; keep the crews free for it.",
)
def second_review_moves_the_start(project: Description, earliest_start: Computed) -> Violations:
    """Work is planned for a day that one review leaves free and a second one takes, with the mockup not accepted."""
    more, planned, earliest = read_all(
        lambda: project.contract.resubmittal_days, lambda: project.schedule.work_start, earliest_start
    )
    days = {step.symbol: step.value for step in earliest.steps}
    first, second = (days_after(project.schedule.submit_on, round(days[symbol])) for symbol in ("E", "E_2"))
    if more and first <= planned < second and project.mockup.get("accepted_on") is None:
        if "A" in days and not any(row.symbol == "c" for row in earliest.inputs):
            require_drying_to_primer(project)  # a color may be needed later than the mockup begins
        yield violation(planned, wanted=second)
