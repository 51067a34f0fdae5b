"""Spraying stops at a wind no higher than public painting specifications set it.

Why: wind bends the fan, dries the mist before it lands and carries the rest onto other people's cars. It
leaves stripes, mottle and a rough feel.

passes
    weather: {max_spray_wind: 8 mph}
fails WEA-03a at weather.max_spray_wind
    weather: {max_spray_wind: 20 mph}
fails WEA-03b at weather.max_spray_wind
    weather: {max_spray_wind: 12 mph}
fails WEA-03c at log.0.wind
    weather: {max_spray_wind: 8 mph}
    log: [{step: gloss, wind: 9 mph}]
fails WEA-03d at log.0.gust
    weather: {max_spray_wind: 8 mph}
    log: [{step: gloss, wind: 6 mph, gust: 13 mph}]
"""

from specgen.judging.choice_groups import SPRAYED
from specgen.judging.rule import CAUTION, STOP, Limits, Rule, Violations, violation
from specgen.judging.site_limits import most_wind
from specgen.model.typed_views import Description, SiteRecordEntry
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "WEA-03",
    "Wind during spraying",
    remedy="Set the wind limit on the mockup; stop at the first tiger stripe.",
    steps="protection primer gloss",
    documents="D05 D08 D12c",
)

RULE.clause(
    "a",
    STOP,
    "The wind limit for spraying is {found}; public painting specifications allow a maximum of {wanted}.",
    when="weather.max_spray_wind > limit",
    limit="weather.wind_most",
    remedy="Lower the wind limit to {weather.wind_most} or less.",
)

RULE.clause(
    "b",
    CAUTION,
    "The wind limit for spraying is {found}; above {wanted} a metallic finish shows stripes and dry spray.",
    when="weather.max_spray_wind <= limit(weather.wind_most) and weather.max_spray_wind > limit",
    limit="weather.wind_usual",
    remedy=(
        "Lower the limit to {weather.wind_usual}, or prove the higher one on the mockup; stop at the first "
        "tiger stripe."
    ),
)

BLOWN = (
    "Stop. Go on at {wanted} or less, gusts included, or behind a windbreak; recoat striped or dry-sprayed panels to a "
    "natural break, and clean what the mist reached."
)


@RULE.test(
    "c",
    STOP,
    "Wind is {found}; this project sprays up to {wanted}.",
    at="log.wind",
    limit="weather.wind_most",
    step="gloss",
    remedy=BLOWN,
)
def windy(log: SiteRecordEntry, project: Description, limits: Limits) -> Violations:
    """A coat is sprayed in more wind than the project, or the trade, allows."""
    if log.step in SPRAYED:
        yield from _find_stronger(log.wind, project, limits)


@RULE.test(
    "d",
    STOP,
    "Gusts reach {found}; this project sprays up to {wanted}.",
    at="log.gust",
    limit="weather.wind_most",
    step="gloss",
    remedy=BLOWN,
)
def gusty(log: SiteRecordEntry, project: Description, limits: Limits) -> Violations:
    """A coat is sprayed in gusts stronger than the wind that the project, or the trade, allows."""
    if log.step in SPRAYED:
        yield from _find_stronger(log.gust, project, limits)


def _find_stronger(reading: Quantity, project: Description, limits: Limits) -> Violations:
    most = most_wind(project, limits, reading)
    if more(reading, most.value):
        yield violation(reading, wanted=most.value, sources=most.sources)
