"""The board is held by adhesive alone: a fastener under a gloss metal-look coat shows through it.

Why: the head of a fastener moves apart from the board with heat and damp, and low sun throws its
ring into relief. No coat over it hides that for long.

passes
    walls: {W1: {attachment: {method: adhesive_notched_trowel}}}
fails ATT-01a at walls.W1.attachment.method
    walls: {W1: {attachment: {method: adhesive_and_mechanical}}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "ATT-01",
    "Board held by adhesive alone",
    remedy="Glue the board only; if the wall cannot take glue, change the substrate or the finish.",
    steps="boards",
    documents="D02 D08",
)

RULE.clause(
    "a",
    STOP,
    "Fasteners under the board show through a gloss metal-look coat: {found}.",
    when="wall.attachment.method in {mechanical, adhesive_and_mechanical}",
    basis="practice",
)
