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
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found

RULE = Rule(
    "SCH-04",
    "Float for a second review and for weather",
    remedy="One review cycle plus unfit days of the season.",
    steps="site_conditions",
    documents="D14",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "There is no float for a second review.",
    needs="contract.resubmittal_days",
    basis="review_memory",
)
def no_second_review(project: Any) -> Iterator[Found]:
    """No day is kept for a second review."""
    if project.contract.resubmittal_days == 0:
        yield found(project.contract.resubmittal_days)


@RULE.clause(
    "b",
    CAUTION,
    "There is no float for bad weather.",
    needs="schedule.weather_days",
    basis="review_memory",
)
def no_weather_days(project: Any) -> Iterator[Found]:
    """No day is kept for unfit weather."""
    if project.schedule.weather_days == 0:
        yield found(project.schedule.weather_days)
