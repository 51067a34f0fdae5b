"""The board is of a kind that is held by adhesive alone.

Why: the fibers of mineral wool part under the pull of the adhesive, so it is commonly held by fasteners
as well. Their heads show through this finish.

passes
    walls: {W1: {insulation: {kind: eps}}}
fails INS-01a at walls.W1.insulation.kind
    walls: {W1: {insulation: {kind: mineral_wool}}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "INS-01",
    "Board suited to adhesive attachment",
    remedy="Use EPS board, or an approved adhered system with its own mockup.",
    steps="boards",
    documents="D02",
)

RULE.clause(
    "a",
    STOP,
    "Mineral wool requires mechanical fasteners, which show through this finish.",
    when="wall.insulation.kind = mineral_wool",
    basis="practice",
)
