"""The gun keeps its distance from the wall, and the platform leaves the sprayer room behind it.

Why: held close, the gun floods the wall and every stroke shows; held far off, the mist dries before it lands.
A sprayer with his back to the guardrail cannot step away, so the platform decides the distance.

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
    "Gun distance and working space",
    remedy="Keep the gun at its distance from the wall, and give the sprayer room to do so.",
    steps="primer gloss",
    documents="D05 D08 D15",
)

RULE.clause(
    "a",
    CAUTION,
    "The gun is held {found} from the wall; spraying closer than {wanted} leaves visible marks.",
    when="spray.distance < limit",
    limit="spray.distance",
    remedy="Hold the gun a minimum of {spray.distance} from the wall.",
)


@RULE.test(
    "b",
    CAUTION,
    "The distance from the wall to the back of the platform is {found}; gun and sprayer need {wanted}.",
    at="means_of_access.platform_width",
    limit="access.painter_room",
    remedy="Use a platform {access.platform_wide} wide at a gap of {access.gap}, or another access.",
    why="the sprayer needs room behind the gun to hold its distance",
)
def no_room(access: MeansOfAccess, project: Description, limit: Quantity) -> Violations:
    """The platform is too narrow for gun and sprayer."""
    gap, width, distance = read_all(
        lambda: access.face_gap, lambda: access.platform_width, lambda: project.spray.distance
    )
    room, wanted = gap + width, distance + limit
    if less(room, wanted):
        yield violation(room, wanted=wanted)


RULE.clause(
    "c",
    CAUTION,
    ("The gun is held {found} from the wall; beyond {wanted} the spray dries before it lands and the film is rough."),
    when="spray.distance > limit",
    limit="spray.distance_most",
    remedy="Hold the gun a maximum of {spray.distance_most} from the wall.",
)
