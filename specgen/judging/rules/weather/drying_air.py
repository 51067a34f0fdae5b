"""Air and wall are dry and warm enough for the film, as the finish manufacturer says.

Why: a water-borne film dries by giving its water to the air. In damp air it stays soft and takes dirt, and
in the cold its particles do not flow together, so that it chalks or cracks later.
Below, `coating` stands for the content of the coating system file.

passes
    coating: {primer: {most_humidity: 80}, gloss: {most_humidity: 75}}
    weather: {most_humidity: 75}
fails WEA-09a at weather.most_humidity
    coating: {primer: {most_humidity: 80}, gloss: {most_humidity: 75}}
    weather: {most_humidity: 80}
fails WEA-09b at weather.most_humidity
    weather: {most_humidity: 90}
fails WEA-09c at climate.months.0.mean_min
    coating: {primer: {least_dry_temperature: 50 F}, gloss: {least_dry_temperature: 50 F}}
    schedule: {spray_start: 2027-10-04, spray_end: 2027-10-22}
    shade: {X1: {kind: shade_cloth}}
    climate: {months: [{month: oct, mean_min: 41 F}]}
fails WEA-09d at mockup.planned_on
    coating: {primer: {least_dry_temperature: 50 F}, gloss: {least_dry_temperature: 50 F}}
    mockup: {planned_on: 2027-04-12, duration_days: 24}
    shade: {X1: {kind: shade_cloth}}
    climate: {months: [{month: apr, mean_min: 41 F}]}
"""

from functools import partial
from typing import Any

from specgen.judging.choice_groups import SPRAYED
from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.judging.season import in_heated_tents, is_in_season, lies_within, night_and_least
from specgen.model.absence import all_known, any_known, if_given, read_all
from specgen.model.dates import days_after
from specgen.model.source import PRACTICE, Source
from specgen.model.typed_views import Description, Month
from specgen.quantities.comparison import less, more
from specgen.quantities.quantity import Quantity
from specgen.resolving.limits_in_force import given_source

RULE = Rule(
    "WEA-09",
    "Air conditions while the film dries",
    remedy="Wait for fit air, or spray in a tent with vented heat and exhaust.",
    steps="protection primer gloss",
    documents="D05 D08 D12c",
)


@RULE.test(
    "a",
    CAUTION,
    (
        "Spraying is planned up to {found} % relative humidity; the finish manufacturer allows a maximum of "
        "{wanted} %, above which a waterborne film stays soft."
    ),
    at="weather.most_humidity",
    basis="practice",
    remedy=("Lower the humidity limit to that of the manufacturer, or spray in a tent with vented heat and exhaust."),
)
def damper_than_allowed(project: Description) -> Violations:
    """Spraying goes on in damper air than the manufacturer allows for one of the coats."""
    planned = project.weather.most_humidity
    limits = [partial(getattr, project[coat], "most_humidity") for coat in SPRAYED]
    if any_known(*(lambda limit=limit: more(planned, limit()) for limit in limits)):
        most = min(limit() for limit in limits if if_given(limit) is not None)
        yield violation(planned, wanted=most, sources=_sources(project, "most_humidity", most))


RULE.clause(
    "b",
    CAUTION,
    (
        "Spraying is planned up to {found} % relative humidity; public painting specifications allow a "
        "maximum of {wanted} %."
    ),
    when="weather.most_humidity > limit",
    limit="weather.humidity",
    remedy="Lower the humidity limit to {weather.humidity}, or spray in a tent with vented heat and exhaust.",
)


@RULE.test(
    "c",
    CAUTION,
    ("Nights in a month of spraying fall to {found}; the film needs a minimum of {wanted} to dry."),
    at="month.mean_min",
    basis="practice",
    remedy="Move the spraying to warmer months, or spray in a heated tent.",
)
def cold_nights(month: Month, project: Description) -> Violations:
    """The nights are colder than the film bears while it dries, and no heated tent stands around every face."""
    if all_known(
        lambda: is_in_season(month, project),
        lambda: less(*night_and_least(month, project)),
        lambda: not in_heated_tents(project),
    ):
        night, least = night_and_least(month, project)
        yield violation(night, wanted=least, sources=_sources(project, "least_dry_temperature", least))


@RULE.test(
    "d",
    CAUTION,
    "Nights in the month of the mockup fall to {found}; the film needs a minimum of {wanted} to dry.",
    at="mockup.planned_on",
    basis="practice",
    step="mockup",
    remedy=(
        "Enclose the mockup in a heated tent with exhaust, from its first wet work until the gloss is dry; hold in it "
        "the minimum temperature of that work. Heat by an indirect, vented heater clear of board and cloth, with "
        "carbon monoxide alarm and extinguisher."
    ),
)
def cold_mockup(project: Description) -> Violations:
    """The nights of the mockup are colder than the film bears while it dries, and no heated tent is planned."""
    nights = partial(_list_cold_nights, project)
    if all_known(nights, lambda: not in_heated_tents(project)):
        night, least = min(nights(), key=lambda pair: pair[0].amount)
        yield violation(night, wanted=least, sources=_sources(project, "least_dry_temperature", least))


def _list_cold_nights(project: Description) -> list[tuple[Quantity, Quantity]]:
    """The nights of the mockup that are too cold, each with the least; raises Absent for what is not given."""
    months = [month for month in project.climate.months if _is_of_mockup(month, project)]
    return [pair for pair in (night_and_least(month, project) for month in months) if less(*pair)]


def _sources(project: Description, name: str, figure: Any) -> tuple[Source, ...]:
    """Where the figure of the coat that governs comes from, and the practice of heeding it."""
    coat = next(coat for coat in SPRAYED if project.project.get((coat, name)) == figure)
    return (given_source(project.project, (coat, name)), PRACTICE)


def _is_of_mockup(month: Month, project: Description) -> bool:
    """Whether the mockup is made in a month."""
    start, days = read_all(lambda: project.mockup.planned_on, lambda: project.mockup.duration_days)
    return lies_within(month, start, days_after(start, int(days)))
