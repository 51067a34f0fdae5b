"""The gun keeps its distance from the wall, and the platform leaves the painter room behind it.

Why: held close, the gun floods the wall and every stroke shows; held far off, the mist dries before it lands.
A painter with his back to the guardrail cannot step away, so the platform decides the distance.

passes
    spray: {distance: 18 in}
    access: {S1: {kind: frame_scaffold, face_gap: 14 in, platform_width: 30 in}}
fails AIR-05a at spray.distance
    spray: {distance: 12 in}
fails AIR-05b at access.S1.platform_width
    spray: {distance: 18 in}
    access: {S1: {kind: frame_scaffold, face_gap: 6 in, platform_width: 30 in}}
fails AIR-05c at spray.distance
    spray: {distance: 30 in}
"""

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.typed_views import Description, MeansOfAccess
from specgen.quantities.comparison import less
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "AIR-05",
    "Gun distance, and room to keep it",
    remedy="Wider platform ({access.platform_wide} at {access.gap} gap) or another access.",
    steps="primer gloss",
    documents="D05 D08 D15",
)

RULE.clause(
    "a",
    CAUTION,
    "The gun is held {found} from the wall; closer than {wanted} shows.",
    when="spray.distance < limit",
    limit="spray.distance",
)


@RULE.test(
    "b",
    CAUTION,
    "From wall to back of platform are {found}; gun and painter want {wanted}: confirm.",
    at="means_of_access.platform_width",
    limit="access.painter_room",
)
def no_room(access: MeansOfAccess, project: Description, limit: Quantity) -> Violations:
    """The platform is too narrow for gun and painter."""
    gap, width, distance = read_all(
        lambda: access.face_gap, lambda: access.platform_width, lambda: project.spray.distance
    )
    room, wanted = gap + width, distance + limit
    if less(room, wanted):
        yield violation(room, wanted=wanted)


RULE.clause(
    "c",
    CAUTION,
    "The gun is held {found} from the wall; beyond {wanted} the mist dries before it lands and the film is rough.",
    when="spray.distance > limit",
    limit="spray.distance_most",
)
