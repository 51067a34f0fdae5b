"""Spraying is not planned for months that are too cold by day.

Why: below {weather.least_coats} a waterborne film does not close. It stays soft and dull, and washes off in the next
rain.

passes
    climate: {months: [{month: jul, mean_max: 85 F}, {month: dec, mean_max: 41 F}]}
    schedule: {spray_start: 2027-07-12, spray_end: 2027-08-20}
    shade: {X1: {kind: shade_cloth}}
fails WEA-05a at climate.months.0.mean_max
    climate: {months: [{month: dec, mean_max: 41 F}]}
    schedule: {spray_start: 2027-11-29, spray_end: 2027-12-17}
    shade: {X1: {kind: shade_cloth}}
"""

from typing import Any

from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.judging.season import in_heated_tents, is_in_season
from specgen.model.absence import all_known
from specgen.model.typed_views import Description, Month
from specgen.quantities.comparison import less

RULE = Rule(
    "WEA-05",
    "No spraying in cold months",
    remedy="Move the spraying to warmer months, or spray in a heated tent.",
    steps="protection",
    documents="D05 D14",
)


@RULE.test(
    "a",
    STOP,
    "Spraying is planned in a month with a mean high of {found}; minimum {wanted}.",
    at="month.mean_max",
    limit="weather.least_coats",
)
def cold_days(month: Month, project: Description, limit: Any) -> Violations:
    """The days of a month of spraying are too cold, and no heated tent stands around every face."""
    if all_known(
        lambda: is_in_season(month, project),
        lambda: less(month.mean_max, limit),
        lambda: not in_heated_tents(project),
    ):
        yield violation(month.mean_max, wanted=limit)
