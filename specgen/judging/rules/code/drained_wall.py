"""Where the code requires a drained wall, the wall is drained.

Why: water that gets behind the board of a framed wall has no other way out, and the wood or steel
behind it stays wet. Code asks for drainage where people live in such buildings.

passes
    code: {model: ibc, construction_type: VB, occupancy_groups: [R-2]}
    walls: {W1: {framing: {kind: wood}, drainage: {kind: adhesive_ribbons}}}
fails COD-02a at walls.W1.drainage.kind
    code: {model: ibc, construction_type: VB, occupancy_groups: [R-2]}
    walls: {W1: {framing: {kind: wood}, drainage: {kind: none}}}
"""

from specgen.judging.rule import STOP, LookedUp, Rule, Violations, violation
from specgen.model.absence import all_known
from specgen.model.typed_views import Wall

RULE = Rule(
    "COD-02",
    "Drained wall where the code requires one",
    remedy="Change to a drained system: vertical adhesive ribbons, grooved board, or a drainage mat, with weeps "
    "at base and heads.",
    steps="boards",
    documents="D02",
)


@RULE.test(
    "a",
    STOP,
    "The code requires a drained wall here, and this wall has no drainage.",
    at="wall.drainage.kind",
    basis="ibc_drainage ibc_drainage_memory irc_drainage",
    lift="never",
)
def undrained(wall: Wall, drainage_due: LookedUp) -> Violations:
    """Drainage is due and there is none."""
    if all_known(lambda: wall.drainage.kind == "none", lambda: drainage_due().result):
        yield violation(wall.drainage.kind, sources=drainage_due().source)
