"""Within reach of people and carts the wall is of more than the standard impact class.

Why: thin board under a thin skin dents at the first knock, and a dent in gloss is seen from across the
street. Heavier mesh up to the height of a person spreads the blow.

passes
    elevations:
      E1:
        public_reach: yes
        impact_zones: [{from: 0 ft, to: 8 ft, class: high}, {from: 8 ft, to: 24 ft, class: standard}]
fails BAS-04a at elevations.E1.impact_zones
    elevations: {E1: {public_reach: yes, impact_zones: [{from: 0 ft, to: 24 ft, class: standard}]}}
"""

from functools import partial

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.absence import all_known, any_known
from specgen.model.project import Members
from specgen.model.typed_views import Elevation, ImpactZone
from specgen.quantities.comparison import less, more
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "BAS-04",
    "Impact resistance within reach",
    remedy="Install heavier mesh to a minimum height of {mesh.heavy_height}.",
    steps="heavy_mesh",
    documents="D07 D08",
)


@RULE.test(
    "a",
    CAUTION,
    "The wall within public reach is of standard impact class only, below {wanted}.",
    at="elevation.impact_zones",
    limit="mesh.heavy_height",
)
def standard_within_reach(elevation: Elevation, limit: Quantity) -> Violations:
    """A height within reach lies in no impact zone, or in one of the standard class."""
    zones = elevation.impact_zones
    if all_known(
        lambda: elevation.public_reach,
        lambda: any_known(*(partial(_standard, zone, limit) for zone in zones), lambda: _uncovered(zones, limit)),
    ):
        yield violation(wanted=limit)


def _standard(zone: ImpactZone, top: Quantity) -> bool:
    """Whether a zone of the standard class begins below a height."""
    return all_known(lambda: zone["class"] == "standard", lambda: less(zone["from"], top))


def _uncovered(zones: Members[ImpactZone], top: Quantity) -> bool:
    """Whether a height from the ground to `top` lies in no zone; zones that touch are joined."""
    reach = Quantity.of(0, "ft")
    for low, high in sorted((zone["from"], zone.to) for zone in zones):
        if not more(low, reach):
            reach = max(reach, high)
    return less(reach, top)
