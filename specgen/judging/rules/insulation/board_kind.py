"""The board is of a kind that is held by glue alone.

Why: the fibers of mineral wool part under the pull of the glue, so it is commonly held by fasteners
as well. Their heads show through this finish.

passes
    walls: {W1: {insulation: {kind: eps}}}
fails INS-01a at walls.W1.insulation.kind
    walls: {W1: {insulation: {kind: mineral_wool}}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found

RULE = Rule(
    "INS-01",
    "Board that glue alone can hold",
    remedy="EPS; or an approved glued system with its own mockup.",
    steps="boards",
    documents="D02",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "Mineral wool needs fasteners, and fasteners show through this finish.",
    each="walls",
    needs="walls.*.insulation.kind",
    basis="practice",
)
def mineral_wool(wall: Any) -> Iterator[Found]:
    """The board is mineral wool."""
    if wall.insulation.kind == "mineral_wool":
        yield found(wall.insulation.kind)
