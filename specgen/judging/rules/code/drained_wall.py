"""Where code asks for a drained wall, the wall is drained.

Why: water that gets behind the board of a framed wall has no other way out, and the wood or steel
behind it stays wet. Code asks for drainage where people live in such buildings.

passes
    code: {model: ibc, construction_type: VB, occupancy_groups: [R-2]}
    walls: {W1: {framing: {kind: wood}, drainage: {kind: adhesive_ribbons}}}
fails COD-02a at walls.W1.drainage.kind
    code: {model: ibc, construction_type: VB, occupancy_groups: [R-2]}
    walls: {W1: {framing: {kind: wood}, drainage: {kind: none}}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.judging.three_valued import every

RULE = Rule(
    "COD-02",
    "Drained wall where code asks for one",
    remedy="Drained system.",
    steps="boards",
    documents="D02",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "Code requires a drained wall here.",
    each="walls",
    lift="never",
    needs="calc.drainage_due walls.*.drainage.kind",
    basis="ibc_drainage",
)
def undrained(wall: Any, resolve: Any) -> Iterator[Found]:
    """Drainage is due and there is none."""
    if every(lambda: wall.drainage.kind == "none", lambda: resolve("drainage-due").result):
        yield found(wall.drainage.kind)
