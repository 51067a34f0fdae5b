"""Behind a drained board water runs down freely and finds its way out.

Why: water gets behind every board sooner or later. A full bed or a level ribbon of adhesive holds it there,
and a path without an outlet only stores it.

passes
    walls:
      W1:
        attachment: {method: adhesive_notched_trowel, ribbon_direction: vertical}
        drainage: {kind: adhesive_ribbons, efficiency: 94, outlets: [base, heads]}
fails ATT-08a at walls.W1.attachment.method
    walls: {W1: {attachment: {method: adhesive_ribbon_and_dab}, drainage: {kind: adhesive_ribbons}}}
fails ATT-08b at walls.W1.attachment.ribbon_direction
    walls:
      W1:
        attachment: {method: adhesive_notched_trowel, ribbon_direction: horizontal}
        drainage: {kind: adhesive_ribbons}
fails ATT-08c at walls.W1.drainage.efficiency
    walls: {W1: {drainage: {kind: grooved_board, efficiency: 85}}}
fails ATT-08d at walls.W1.drainage.outlets
    walls: {W1: {drainage: {kind: drainage_mat, outlets: []}}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, STOP, Found, Rule, found
from specgen.judging.three_valued import every, some
from specgen.quantities.comparison import less

RULE = Rule(
    "ATT-08",
    "Water can run down behind a drained board",
    remedy="Vertical notched ribbons, grooved board or mat; weep at every base and head.",
    steps="boards",
    documents="D08 D11",
    manual=__doc__,
)

DAMMING = ("adhesive_full_bed", "adhesive_ribbon_and_dab")
# Boards and mats that drain whatever the adhesive does.
DRAINING = ("grooved_board", "drainage_mat")


@RULE.clause(
    "a",
    CAUTION,
    "The adhesive pattern {found} dams the drainage path: confirm.",
    each="walls",
    needs="calc.drainage_due walls.*.drainage.kind walls.*.attachment.method",
    basis="astm_e2273_memory",
)
def pattern_dams(wall: Any, resolve: Any) -> Iterator[Found]:
    """The pattern of the adhesive leaves no way down for the water."""
    if every(lambda: wall.attachment.method in DAMMING, lambda: _drains_by_adhesive(wall, resolve)):
        yield found(wall.attachment.method)


@RULE.clause(
    "b",
    CAUTION,
    "Horizontal ribbons dam the drainage path: confirm.",
    each="walls",
    needs="calc.drainage_due walls.*.drainage.kind walls.*.attachment.ribbon_direction",
    basis="astm_e2273_memory",
)
def ribbons_dam(wall: Any, resolve: Any) -> Iterator[Found]:
    """The ribbons of adhesive run across the way of the water."""
    if every(lambda: wall.attachment.ribbon_direction == "horizontal", lambda: _drains_by_adhesive(wall, resolve)):
        yield found(wall.attachment.ribbon_direction)


@RULE.clause(
    "c",
    STOP,
    "Drainage efficiency is {found} %; at least {wanted} % is asked of a drained wall.",
    each="walls",
    needs="walls.*.drainage.kind walls.*.drainage.efficiency",
    limit="drainage.efficiency",
)
def drains_poorly(wall: Any, limit: Any) -> Iterator[Found]:
    """Less of the water came out in the test than is asked for."""
    if every(lambda: wall.drainage.kind != "none", lambda: less(wall.drainage.efficiency, limit)):
        yield found(wall.drainage.efficiency, wanted=limit)


@RULE.clause(
    "d",
    CAUTION,
    "The drained wall has no outlet for its water: confirm.",
    each="walls",
    needs="walls.*.drainage.kind walls.*.drainage.outlets",
    basis="astm_e2273_memory",
)
def no_outlet(wall: Any) -> Iterator[Found]:
    """The water has no way out."""
    if every(lambda: wall.drainage.kind != "none", lambda: not wall.drainage.outlets):
        yield found()


def _drains_by_adhesive(wall: Any, resolve: Any) -> bool:
    """Whether the wall is drained, or must be, with nothing but the adhesive to leave the water its way."""
    return every(
        lambda: wall.drainage.kind not in DRAINING,
        lambda: some(lambda: wall.drainage.kind != "none", lambda: resolve("drainage-due").result),
    )
