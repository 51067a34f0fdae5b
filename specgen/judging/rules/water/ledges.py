"""A deep ledge is sloped enough to shed water, or has a metal cap.

Why: water and snow stand on a flat ledge. The lamina is not made for standing water: it softens, cracks in
frost, and lets the water into the wall.

passes
    details: {L1: {kind: ledge, slope: 6 in 12, depth: 14 in}}
fails WAT-04a at details.L1.slope
    details: {L1: {kind: ledge, slope: 2 in 12, depth: 14 in}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "WAT-04",
    "Ledge slope",
    remedy="Slope the ledge a minimum of {ledge.slope}, or cover it with a metal cap.",
    steps="board_layout",
    documents="D07 D08",
)

RULE.clause(
    "a",
    STOP,
    "Ledge slope is {found}; minimum {wanted} on a ledge this deep, or the ledge holds water.",
    when="water_detail.kind = ledge and water_detail.depth > limit(ledge.depth) and water_detail.slope < limit",
    limit="ledge.slope",
)
