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

from specgen.judging.rule import CAUTION, Rule

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
