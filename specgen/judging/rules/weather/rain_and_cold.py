"""No rain falls on fresh work, and the next night is warm enough for it, or a tent keeps both off.

Why: rain washes out what has not set and marks what has not dried. A coat that is caught by a cold night stays soft,
and marks at the first dew.

passes
    elevations: {E1: {wall: W1}}
    shade: {T1: {elevation: E1, kind: tent, heated: yes}}
    log: [{step: gloss, elevation: E1, rain: yes, forecast_rain: yes, forecast_low: 35 F}]
fails WEA-02a at log.0.rain
    elevations: {E1: {wall: W1}}
    shade: {X1: {elevation: E1, kind: shade_cloth}}
    log: [{step: primer, elevation: E1, rain: yes}]
fails WEA-02b at log.0.forecast_rain
    elevations: {E1: {wall: W1}}
    shade: {X1: {elevation: E1, kind: none}}
    log: [{step: gloss, elevation: E1, forecast_rain: yes}]
fails WEA-02c at log.0.forecast_low
    elevations: {E1: {wall: W1}}
    shade: {T1: {elevation: E1, kind: tent, heated: no}}
    log: [{step: gloss, elevation: E1, forecast_low: 46 F}]
fails WEA-02d at log.0.forecast_low
    elevations: {E1: {wall: W1}}
    shade: {X1: {elevation: E1, kind: none}}
    log: [{step: boards, elevation: E1, forecast_low: 34 F}]
"""

from specgen.judging.choice_groups import COAT_WORK, DRY_WORK, EIFS_WORK
from specgen.judging.rule import STOP, Limits, Rule, Violation, Violations, violation
from specgen.judging.site_limits import Figure, is_tented, least_temperature
from specgen.model.absence import all_known, if_given
from specgen.model.standard import Standards
from specgen.model.typed_views import Description, SiteRecordEntry
from specgen.quantities.comparison import less
from specgen.quantities.quantity import Quantity
from specgen.resolving.limits_in_force import limit_in_force
from specgen.weather.hold import Hold, find_hold

RULE = Rule(
    "WEA-02",
    "Rain and the night after the work",
    remedy=(
        "Do not begin; or close the tent over the work and hold its air at the least temperature for {weather.hold} or "
        "until the work is dry, whichever is longer."
    ),
    steps="smoothing_1 smoothing_2 primer gloss",
    documents="D12c D14",
)


@RULE.test(
    "a",
    STOP,
    "It rains, and no tent stands at this elevation.",
    at="log.rain",
    basis="practice",
    remedy="Stop and cover the work. Let the wall dry; replace or recoat to a natural break what the rain reached.",
)
def rain_on_the_work(log: SiteRecordEntry, project: Description) -> Violations:
    """It rains on work that no tent covers."""
    if if_given(lambda: log.step) not in DRY_WORK and all_known(lambda: log.rain, lambda: not is_tented(log, project)):
        yield violation("yes")


@RULE.test(
    "b",
    STOP,
    "Rain is forecast, and no tent stands at this elevation; required: {wanted}.",
    at="log.forecast_rain",
    basis="practice",
    remedy=(
        "Do not begin; or tent the work, and keep it closed for {weather.hold} or until the work is dry, whichever is "
        "longer."
    ),
)
def rain_to_come(log: SiteRecordEntry, project: Description, standards: Standards) -> Violations:
    """Rain is forecast for work that no tent covers."""
    if if_given(lambda: log.step) not in DRY_WORK and all_known(
        lambda: log.forecast_rain, lambda: not is_tented(log, project)
    ):
        hold = _find_hold(log, project, standards)
        remedy = f"Do not begin; or tent the work, and keep it closed for {hold.hours} h after it, until it is dry."
        yield violation("yes", f"none within {hold.hours} h", sources=(hold.source,), remedy=remedy)


@RULE.test(
    "c",
    STOP,
    "The forecast falls to {found}; minimum {wanted} until the coat is dry.",
    at="log.forecast_low",
    limit="weather.least_coats",
    remedy=(
        "Do not begin; or close a heated tent over the coat, and hold {wanted} or more in it for {weather.hold} or "
        "until the coat is dry, whichever is longer."
    ),
)
def cold_night_on_a_coat(
    log: SiteRecordEntry, project: Description, limits: Limits, standards: Standards
) -> Violations:
    """A coat is to dry in a colder night than it bears, and in no heated tent."""
    if log.step in COAT_WORK and all_known(
        lambda: _is_colder(log, project, limits), lambda: not is_tented(log, project, heated=True)
    ):
        least = least_temperature(log, project, limits, log.forecast_low)
        sources = least.sources or (limit_in_force(project.project, standards.limits["weather.least_coats"]).source,)
        words = ("the coat", "until the coat is dry")
        yield _tell_cold(log, Figure(least.value, sources), _find_hold(log, project, standards), words)


def _is_colder(log: SiteRecordEntry, project: Description, limits: Limits) -> bool:
    """Whether the night is colder than a coat bears."""
    return less(log.forecast_low, least_temperature(log, project, limits, log.forecast_low).value)


@RULE.test(
    "d",
    STOP,
    "The forecast falls to {found}; minimum {wanted} until adhesive and base coat have set.",
    at="log.forecast_low",
    limit="weather.least_eifs",
    step="smoothing_1",
    remedy=(
        "Do not begin; or close a heated tent over the work, and hold {wanted} or more in it for {weather.hold_eifs} "
        "or until it has set, whichever is longer."
    ),
    why="adhesive and base coat that freeze before they have set do not hold",
)
def cold_night_on_base_coat(
    log: SiteRecordEntry, project: Description, limit: Quantity, standards: Standards
) -> Violations:
    """Adhesive or base coat is to set in a colder night than it bears, and in no heated tent."""
    if log.step in EIFS_WORK and all_known(
        lambda: less(log.forecast_low, limit), lambda: not is_tented(log, project, heated=True)
    ):
        sources = (limit_in_force(project.project, standards.limits["weather.least_eifs"]).source,)
        words = ("the work", "until it has set")
        yield _tell_cold(log, Figure(limit, sources), _find_hold(log, project, standards), words)


def _find_hold(log: SiteRecordEntry, project: Description, standards: Standards) -> Hold:
    """The hours behind the step of an entry; of a wall that is not told yet those usual in the trade."""
    wall = if_given(lambda: log.elevation.wall.mark) or ""
    return find_hold(project.project, standards, str(if_given(lambda: log.step) or ""), (wall,))


def _tell_cold(log: SiteRecordEntry, least: Figure, hold: Hold, words: tuple[str, str]) -> Violation:
    """A cold night, with the hours through which a tent has to be heated, and whose they are where it dries longer."""
    what, until = words
    remedy = (
        f"Do not begin; or close a heated tent over {what}, and hold {{wanted}} or more in it for {hold.hours} h, "
        f"{until}."
    )
    sources = (*least.sources, hold.source) if hold.dries else least.sources
    return violation(log.forecast_low, least.value, sources=tuple(dict.fromkeys(sources)), remedy=remedy)
