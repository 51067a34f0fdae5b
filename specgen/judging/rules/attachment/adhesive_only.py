"""The board is held by adhesive alone: a fastener under a metallic gloss finish shows through it.

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
    "Adhesive attachment only",
    remedy="Attach the board with adhesive only; if the substrate cannot take adhesive, change the substrate or "
    "the finish.",
    steps="boards",
    documents="D02 D08",
)

RULE.clause(
    "a",
    STOP,
    "Attachment is {found}: fasteners through the board show in a metallic gloss finish.",
    when="wall.attachment.method in {mechanical, adhesive_and_mechanical}",
    basis="practice",
)
