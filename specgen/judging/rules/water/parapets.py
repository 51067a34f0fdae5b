"""A parapet has a metal cap over a membrane, and no EIFS on its top.

Why: rain, snow and ice stand on the top of a wall. A lamina there cracks, and what enters runs down behind
the board on both sides.

passes
    details: {P1: {kind: parapet, cap: yes}}
fails WAT-03a at details.P1.cap
    details: {P1: {kind: parapet, cap: no}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "WAT-03",
    "Parapet caps",
    remedy="Install a metal cap sloped to the roof, over a membrane that covers the top of the wall; no EIFS on "
    "the top.",
    steps="flashings",
    documents="D08 D11",
)

RULE.clause(
    "a",
    STOP,
    "The parapet has no cap, so water enters at the top of the wall.",
    when="water_detail.kind = parapet and water_detail.cap = no",
    found="",
    basis="practice",
    lift="never",
)
