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

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found

RULE = Rule(
    "ACC-09",
    "Overspray kept off what lies around",
    remedy="Exclusion, covers, wind watch, notices.",
    steps="site_conditions protection",
    documents="D05 D08 D15",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "Overspray will land on cars below.",
    needs="site.surroundings",
    basis="practice",
    step="protection",
)
def cars_below(project: Any) -> Iterator[Found]:
    """Cars stand where the mist comes down."""
    if "vehicles_below" in project.site.surroundings:
        yield found("vehicles_below")


@RULE.clause(
    "b",
    CAUTION,
    "Overspray will land on people below.",
    needs="site.surroundings",
    basis="practice",
    step="protection",
)
def people_below(project: Any) -> Iterator[Found]:
    """People pass where the mist comes down."""
    if "public_way_below" in project.site.surroundings:
        yield found("public_way_below")


@RULE.clause(
    "c",
    CAUTION,
    "Overspray will land on the neighbors' walls and glass.",
    needs="site.surroundings",
    basis="practice",
    step="protection",
)
def neighbors_close(project: Any) -> Iterator[Found]:
    """Neighbors' walls and glass stand in the mist."""
    if "neighbors_close" in project.site.surroundings:
        yield found("neighbors_close")
