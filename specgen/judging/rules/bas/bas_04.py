"""Within reach of people the wall bears more than the standard impact.

Why: Carts, ladders and hands reach a wall long before the weather does.

passes
    {elevations: {E1: {public_reach: yes, impact_zones: [{from: 0 ft, to: 6 ft, class: high}]}}}
fails BAS-04a at elevations.E1.public_reach
    {elevations: {E1: {public_reach: yes, impact_zones: [{from: 0 ft, to: 5 ft, class: high}]}}}
"""

from collections.abc import Iterator
from typing import Any

from ....vocabulary.comparison import less, more
from ....vocabulary.quantity import Quantity
from ...rule import CAUTION, Found, Rule, found

RULE = Rule(
    "BAS-04",
    "Impact class within reach",
    remedy="Heavier mesh to at least 6 ft.",
    steps="heavy_mesh",
    documents="D07 D08",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "The wall within reach of people and carts is only of standard impact class up to {wanted}.",
    needs="elevations.*.public_reach elevations.*.impact_zones.*.from elevations.*.impact_zones.*.to elevations.*.impact_zones.*.class",
    each="elevations",
    limit="mesh.heavy_height",
    at="elevations.*.public_reach",
)
def within_reach(elevation: Any, limit: Any) -> Iterator[Found]:
    """A height within reach has no zone, or one of the standard class."""
    if elevation.public_reach and less(_covered(elevation.impact_zones), limit):
        yield found(wanted=limit)


def _covered(zones: Any) -> Quantity:
    """How high the wall is covered from its foot by zones above the standard class; zones that touch join."""
    top = Quantity.of(0, "ft")
    strong = [(zone["from"], zone.to) for zone in zones if zone["class"] != "standard"]
    for low, high in sorted(strong, key=lambda pair: pair[0]):
        if not more(low, top):
            top = max(top, high)
    return top
