"""A ledge in EIFS is short and sloped enough to shed water, or has a metal cap.

Why: water and snow stand on a flat ledge. The lamina is not made for standing water: it softens, cracks in
frost, and lets the water into the wall.

passes
    details: {L1: {kind: ledge, slope: 6 in 12, depth: 10 in, cap: no}}
fails WAT-04a at details.L1.slope
    details: {L1: {kind: ledge, slope: 2 in 12, depth: 14 in, cap: no}}
fails WAT-04b at details.L1.depth
    details: {L1: {kind: ledge, slope: 6 in 12, depth: 14 in, cap: no}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "WAT-04",
    "Ledge slope and depth",
    remedy="Slope the ledge a minimum of {ledge.slope}, or cover it with a metal cap.",
    steps="board_layout",
    documents="D07 D08",
)

RULE.clause(
    "a",
    STOP,
    "Ledge slope is {found}; minimum {wanted} on a ledge this deep, or the ledge holds water.",
    when="water_detail.kind = ledge and water_detail.cap = no and water_detail.depth > limit(ledge.depth)"
    " and water_detail.slope < limit",
    limit="ledge.slope",
)

RULE.clause(
    "b",
    STOP,
    "Ledge depth is {found}; maximum {wanted} in EIFS without a metal cap, or snow and water stand on it.",
    when="water_detail.kind = ledge and water_detail.cap = no and water_detail.depth > limit",
    limit="ledge.depth",
    remedy="Cap the ledge with metal, make it no deeper than {wanted}, or obtain the EIFS manufacturer's own limit "
    "in writing.",
)
