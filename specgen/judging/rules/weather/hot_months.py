"""Spraying in hot months is planned for the cool hours, or in shade.

Why: on a hot face the mist dries before it flows. The coat turns out dull and rough, and no later coat hides it.

passes
    climate: {months: [{month: jul, mean_max: 85 F}]}
    schedule: {spray_start: 2027-07-12, spray_end: 2027-08-20}
    shade: {X1: {kind: shade_cloth}}
fails WEA-07a at climate.months.0.mean_max
    climate: {months: [{month: jul, mean_max: 85 F}]}
    schedule: {spray_start: 2027-07-12, spray_end: 2027-08-20}
    shade: {X1: {kind: natural}}
fails WEA-07b at climate.months.0.mean_max
    climate: {months: [{month: jul, mean_max: 97 F}]}
    schedule: {spray_start: 2027-07-12, spray_end: 2027-08-20}
    shade: {X1: {kind: shade_cloth}}
"""

from typing import Any

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.judging.season import is_all_covered, is_in_season
from specgen.model.absence import all_known
from specgen.model.typed_views import Description, Month
from specgen.quantities.comparison import less, more

RULE = Rule(
    "WEA-07",
    "Hot months",
    remedy="Spray each elevation in the coolest of its usable hours, D14, and read the wall before each coat.",
    steps="protection",
    documents="D05 D08 D14",
)


@RULE.test(
    "a",
    CAUTION,
    "Days in a month of spraying reach {found}; in the sun, a wall can pass {weather.most_surface} in air "
    "below {wanted}.",
    at="month.mean_max",
    limit="weather.hot_day",
    remedy=(
        "Spray each elevation only under shade cloth or in its own shade, in its usable hours, D14; read the wall "
        "before each coat."
    ),
)
def hot_without_cover(month: Month, project: Description, limit: Any) -> Violations:
    """The days are hot, and cloth or a tent does not keep the sun off every face."""
    if all_known(
        lambda: is_in_season(month, project),
        lambda: not less(month.mean_max, limit),
        lambda: not is_all_covered(project),
    ):
        yield violation(month.mean_max, wanted=limit)


@RULE.test(
    "b",
    CAUTION,
    "Days in a month of spraying reach {found}; above {wanted} on the wall a coat dries dull and rough, even in shade.",
    at="month.mean_max",
    limit="weather.most_surface",
)
def hotter_than_the_wall_may_be(month: Month, project: Description, limit: Any) -> Violations:
    """The air alone is hotter than the wall may be."""
    if all_known(lambda: is_in_season(month, project), lambda: more(month.mean_max, limit)):
        yield violation(month.mean_max, wanted=limit)
