"""The board is adhered to a substrate whose face stays fast when damp.

Why: the paper of gypsum board softens in damp and parts from its core, and whatever is adhered to it
comes away with it.

passes
    walls: {W1: {substrate: {kind: glass_mat_gypsum}}}
fails ATT-04a at walls.W1.substrate.kind
    walls: {W1: {substrate: {kind: paper_faced_gypsum}}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "ATT-04",
    "No board on paper-faced gypsum",
    remedy="Replace the paper-faced gypsum with glass-mat gypsum sheathing or cement board, and apply a "
    "fluid-applied WRB over it.",
    steps="substrate",
    documents="D02",
)

RULE.clause(
    "a",
    STOP,
    "Paper-faced gypsum loses its face when damp, and the adhered board with it.",
    when="wall.substrate.kind = paper_faced_gypsum",
    basis="memory",
)
