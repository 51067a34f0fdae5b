"""The nights of the season are warm enough for the film to dry, or a tent is heated.

Why: a coat is held warm for a day and a night. Where the nights are cold the hold fails again and again, and each time
the crew waits.

passes
    climate: {months: [{month: jul, mean_min: 63 F}]}
    schedule: {spray_start: 2027-07-12, spray_end: 2027-08-20}
    shade: {X1: {kind: shade_cloth}}
fails WEA-06a at climate.months.0.mean_min
    climate: {months: [{month: oct, mean_min: 43 F}]}
    schedule: {spray_start: 2027-09-20, spray_end: 2027-10-15}
    shade: {X1: {kind: shade_cloth}}
"""

from typing import Any

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.judging.season import in_heated_tents, is_in_season, night_and_least
from specgen.model.absence import all_known, if_given
from specgen.model.typed_views import Description, Month
from specgen.quantities.comparison import less

RULE = Rule(
    "WEA-06",
    "Cold nights in the season",
    remedy=(
        "Spray in a heated tent, or count only days whose forecast holds {weather.least_coats} for {weather.hold} h."
    ),
    steps="protection",
    documents="D05 D14",
)


@RULE.test(
    "a",
    CAUTION,
    "Nights in a month of spraying fall to {found}; below {wanted} the {weather.hold} h hold after a coat often fails.",
    at="month.mean_min",
    limit="weather.least_coats",
)
def hold_fails(month: Month, project: Description, limit: Any) -> Violations:
    """The nights are colder than a coat is held at, and no heated tent stands around every face."""
    if all_known(
        lambda: is_in_season(month, project),
        lambda: less(month.mean_min, limit),
        lambda: not _is_told_by_maker(month, project),
        lambda: not in_heated_tents(project),
    ):
        yield violation(month.mean_min, wanted=limit)


def _is_told_by_maker(month: Month, project: Description) -> bool:
    """Whether the nights are under the manufacturer's own figure, which WEA-09 tells."""
    known = if_given(lambda: night_and_least(month, project))
    return known is not None and less(*known)
