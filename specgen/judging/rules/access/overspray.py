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
from specgen.model.typed_views import Description

RULE = Rule(
    "ACC-09",
    "Overspray protection",
    remedy="Identify overspray exposures; assign protection and a wind watch.",
    steps="site_conditions protection",
    documents="D05 D08 D15",
)


@RULE.test(
    "a",
    CAUTION,
    "Vehicles are parked below, within reach of overspray.",
    at="site.surroundings",
    basis="practice",
    step="protection",
)
def vehicles_in_reach(project: Description) -> Violations:
    """Cars stand where the mist drifts."""
    return _find(
        project,
        "vehicles_below",
        "Move vehicles a minimum of {wanted} from spraying, cover those that cannot be moved",
        "Set the exclusion distance, move vehicles beyond it, cover those that cannot be moved",
    )


@RULE.test(
    "b",
    CAUTION,
    "People pass below, within reach of overspray.",
    at="site.surroundings",
    basis="practice",
    step="protection",
)
def people_in_reach(project: Description) -> Violations:
    """A public way runs where the mist drifts."""
    return _find(
        project,
        "public_way_below",
        "Close the area within {wanted} of spraying, post notices",
        "Close the area below, post notices, set the exclusion distance",
    )


@RULE.test(
    "c",
    CAUTION,
    "Neighboring walls and glass are within reach of overspray.",
    at="site.surroundings",
    basis="practice",
    step="protection",
)
def neighbors_in_reach(project: Description) -> Violations:
    """Other buildings stand where the mist drifts."""
    cover = "Notify the neighbors, cover their walls and glass"
    return _find(project, "neighbors_close", cover, cover)


def _find(project: Description, what: str, within: str, without: str) -> Violations:
    """What lies in reach, with its measure by the project's own distance and plan, or what is to be set."""
    if what not in project.site.surroundings:
        return
    distance = if_given(lambda: project.protection.exclusion)
    measure = without if distance is None else within
    planned = if_given(lambda: project.protection.overspray_plan) is not None
    rest = "carry out the overspray plan" if planned else "name a wind watch"
    yield violation(what, wanted=distance, remedy=f"{measure}, and {rest}.")
