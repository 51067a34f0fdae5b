"""The substrate lies within its plane before anything is glued to it.

Why: Gloss shows every wave, and no later layer takes one away.

passes
    {walls: {W1: {substrate: {plane_limit: 1/4 in, plane_measured: 1/4 in}}}}
fails PLN-01a at walls.W1.substrate.plane_measured
    {walls: {W1: {substrate: {plane_limit: 3/16 in, plane_measured: 1/4 in}}}}
"""

from collections.abc import Iterator
from typing import Any

from ....vocabulary.comparison import more
from ...rule import STOP, Found, Rule, found

RULE = Rule(
    "PLN-01",
    "Plane of the substrate",
    remedy="Correct the substrate before boards; never by thick base coat.",
    steps="substrate",
    documents="D11",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The wall is out of plane by {found} under a 10 ft straightedge; {wanted} is the most, and gloss will show it.",
    needs="walls.*.substrate.plane_measured walls.*.substrate.plane_limit",
    each="walls",
    basis="guide_eifs_p22 practice",
    at="walls.*.substrate.plane_measured",
)
def out_of_plane(wall: Any) -> Iterator[Found]:
    """The gap measured is larger than the limit of this wall."""
    if more(wall.substrate.plane_measured, wall.substrate.plane_limit):
        yield found(wall.substrate.plane_measured, wanted=wall.substrate.plane_limit)
