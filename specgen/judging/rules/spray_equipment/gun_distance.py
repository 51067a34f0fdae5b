"""The gun keeps its distance from the wall, and the platform leaves the painter room behind it.

Why: held close, the gun floods the wall and every stroke shows. A painter with his back to the guardrail
cannot step away, so the platform decides the distance.

passes
    spray: {distance: 18 in}
    access: {S1: {kind: frame_scaffold, face_gap: 14 in, platform_width: 30 in}}
fails AIR-05a at spray.distance
    spray: {distance: 12 in}
fails AIR-05b at access.S1.platform_width
    spray: {distance: 18 in}
    access: {S1: {kind: frame_scaffold, face_gap: 6 in, platform_width: 30 in}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found
from specgen.quantities.comparison import less

RULE = Rule(
    "AIR-05",
    "Gun distance, and room to keep it",
    remedy="Wider platform (26 in at 14 in gap) or another access.",
    steps="primer gloss",
    documents="D05 D08 D15",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "The gun is held {found} from the wall; closer than {wanted} shows.",
    needs="spray.distance",
    limit="spray.distance",
)
def held_close(project: Any, limit: Any) -> Iterator[Found]:
    """The gun is held closer than usual."""
    if less(project.spray.distance, limit):
        yield found(project.spray.distance, wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "From wall to back of platform are {found}; gun and painter want {wanted}: confirm.",
    each="access",
    needs="spray.distance access.*.face_gap access.*.platform_width",
    limit="access.painter_room",
)
def no_room(access: Any, project: Any, limit: Any) -> Iterator[Found]:
    """The platform is too narrow for gun and painter."""
    room, wanted = access.face_gap + access.platform_width, project.spray.distance + limit
    if less(room, wanted):
        yield found(room, wanted=wanted)
