"""What overspray may reach is known before spraying, and kept clear or covered.

Why: mist of a metal-look coat drifts far and sets on paint and glass. A row of parked cars costs more than
the wall.

passes
    site: {surroundings: [dust]}
fails ACC-09a at site.surroundings
    site: {surroundings: [vehicles_below]}
fails ACC-09b at site.surroundings
    site: {surroundings: [public_way_below]}
fails ACC-09c at site.surroundings
    site: {surroundings: [neighbors_close]}
"""

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.absence import if_given
from specgen.model.source import PRACTICE
from specgen.model.typed_views import Description
from specgen.resolving.limits_in_force import given_source

RULE = Rule(
    "ACC-09",
    "Overspray protection",
    remedy="Identify overspray exposures; assign protection and one person to measure the wind.",
    steps="site_conditions protection",
    documents="D05 D08 D15",
)


_SET = "Set the exclusion distance, proposed minimum {protection.exclusion}"
_WATCH = ", and assign one person to measure the wind."
_WIND = " Stop above the maximum wind, proposed {weather.wind_usual}."
_VEHICLES = "keep people beyond it, protect entries, have the owner move vehicles out of it"
_NEIGHBORS = "Notify the neighbors, cover their walls and glass"


@RULE.test(
    "a",
    CAUTION,
    "Vehicles below may be within reach of overspray.",
    at="site.surroundings",
    basis="practice",
    step="protection",
    remedy=f"{_SET}; {_VEHICLES}{_WATCH}{_WIND}",
)
def vehicles_in_reach(project: Description) -> Violations:
    """Cars stand where the mist drifts."""
    within = "Keep vehicles and people beyond {wanted} of spraying, protect entries"
    return _find(project, "vehicles_below", within, f"{_SET}; {_VEHICLES}")


@RULE.test(
    "b",
    CAUTION,
    "People pass below, within reach of overspray.",
    at="site.surroundings",
    basis="practice",
    step="protection",
    remedy=f"{_SET}; close the area within it, post notices{_WATCH}{_WIND}",
)
def people_in_reach(project: Description) -> Violations:
    """A public way runs where the mist drifts."""
    within = "Close the area within {wanted} of spraying, post notices"
    return _find(project, "public_way_below", within, f"{_SET}; close the area within it, post notices")


@RULE.test(
    "c",
    CAUTION,
    "Neighboring walls and glass are within reach of overspray.",
    at="site.surroundings",
    basis="practice",
    step="protection",
    remedy=f"{_NEIGHBORS}{_WATCH}{_WIND}",
)
def neighbors_in_reach(project: Description) -> Violations:
    """Other buildings stand where the mist drifts."""
    return _find(project, "neighbors_close", _NEIGHBORS, _NEIGHBORS)


def _find(project: Description, what: str, within: str, without: str) -> Violations:
    """What lies in reach, with its measure by the project's own distance, plan, and wind, or what is to be set."""
    if what not in project.site.surroundings:
        return
    distance = if_given(lambda: project.protection.exclusion)
    measure = without if distance is None else within
    planned = if_given(lambda: project.protection.overspray_plan) is not None
    rest = ", and carry out the overspray plan." if planned else _WATCH
    wind = "" if if_given(lambda: project.weather.max_spray_wind) is not None else _WIND
    sources = () if distance is None else (given_source(project.project, ("protection", "exclusion")), PRACTICE)
    yield violation(what, wanted=distance, remedy=f"{measure}{rest}{wind}", sources=sources)
