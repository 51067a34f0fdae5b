"""The board is glued to a substrate whose face stays fast when damp.

Why: the paper of gypsum board softens in damp and parts from its core, and whatever is glued to it
comes away with the paper.

passes
    walls: {W1: {substrate: {kind: glass_mat_gypsum}}}
fails ATT-04a at walls.W1.substrate.kind
    walls: {W1: {substrate: {kind: paper_faced_gypsum}}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "ATT-04",
    "No board glued to paper-faced gypsum",
    remedy="Glass-mat gypsum or cement board with fluid-applied barrier.",
    steps="substrate",
    documents="D02",
)

RULE.clause(
    "a",
    STOP,
    "Damp paper facing lets go and takes the glued board with it.",
    when="wall.substrate.kind = paper_faced_gypsum",
    basis="memory",
)
