"""On a tall face, or one with two kinds of framing, somebody has said which places move.

Why: an empty list of moving places may mean that none moves, or that nobody looked. The lamina cracks
where the frame behind it moves, and lets water in.

passes
    elevations: {E1: {height: 24 ft, joint_needs: {}, no_joint_reason: one concrete wall without a joint}}
fails WAT-08a at elevations.E1.joint_needs
    elevations: {E1: {height: 24 ft, joint_needs: {}}}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "WAT-08",
    "Movement joint locations given",
    remedy="Name each place that moves, or state why none moves.",
    steps="board_layout",
    documents="D07",
)

RULE.clause(
    "a",
    CAUTION,
    "It is not stated whether any place on this face moves.",
    when="(elevation.height > limit or elevation.framing_changes = yes) and elevation.joint_needs is empty "
    "and elevation.no_joint_reason is not given",
    found="",
    at="elevation.joint_needs",
    limit="face.height",
    basis="practice",
)
