"""A face that is looked at closely has a closer plane than the usual one.

Why: The usual limit is that of walls without gloss; light along the face doubles every shadow.

passes
    {elevations: {E1: {prominent: yes, critical_light: yes}}, walls: {W1: {substrate: {plane_limit: 3/16 in}}}}
fails PLN-02a at elevations.E1.prominent
    {elevations: {E1: {prominent: yes}}}
fails PLN-02b at elevations.E1.critical_light
    {elevations: {E1: {critical_light: yes}}}
"""

from collections.abc import Iterator
from typing import Any

from ....vocabulary.comparison import less
from ...rule import CAUTION, Found, Rule, found

RULE = Rule(
    "PLN-02",
    "Plane of faces that show",
    remedy="Architect states a tighter limit for this face.",
    steps="substrate",
    documents="D05 D09",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "A limit of {found} in 10 ft is too loose for a prominent face.",
    needs="elevations.*.prominent walls.*.substrate.plane_limit",
    each="elevations",
    limit="substrate.plane",
    at="elevations.*.prominent",
)
def prominent_face(elevation: Any, limit: Any) -> Iterator[Found]:
    """The limit is the usual one on a prominent face."""
    if elevation.prominent and not less(elevation.wall.substrate.plane_limit, limit):
        yield found(elevation.wall.substrate.plane_limit, wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "A limit of {found} in 10 ft is too loose where light rakes the face.",
    needs="elevations.*.critical_light walls.*.substrate.plane_limit",
    each="elevations",
    limit="substrate.plane",
    at="elevations.*.critical_light",
)
def raked_face(elevation: Any, limit: Any) -> Iterator[Found]:
    """The limit is the usual one where light rakes the face."""
    if elevation.critical_light and not less(elevation.wall.substrate.plane_limit, limit):
        yield found(elevation.wall.substrate.plane_limit, wanted=limit)
