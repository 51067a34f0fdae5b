"""The finish goes on adhered board with its base coat, never straight on sheathing over framing.

Why: sheathing moves at every joint and screw, and a gloss coat throws each line of it into relief.
The board and its reinforced base coat keep the finish apart from the frame.

passes
    walls: {W1: {attachment: {method: adhesive_full_bed}}}
fails ATT-02a at walls.W1.attachment.method
    walls: {W1: {attachment: {method: direct_applied}}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "ATT-02",
    "Finish on adhered board only",
    remedy="Install adhered EPS board with a reinforced base coat, or choose another finish.",
    steps="substrate boards",
    documents="D02 D08",
)

RULE.clause(
    "a",
    STOP,
    "A finish applied directly to sheathing or cement board shows its joints, fasteners, and movement under gloss.",
    when="wall.attachment.method = direct_applied",
    basis="practice",
)
