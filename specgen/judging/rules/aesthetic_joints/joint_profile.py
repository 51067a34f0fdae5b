"""Aesthetic joints are V-shaped and cut with a router or a hot groove tool.

Why: spray reaches both slopes of a V evenly, while the sides of a square groove stay dry or run. A
saw tears the beads of the board, and the ragged line stays in sight.

passes
    aesthetic_joint: {profile: v, cut_tool: router}
fails AJT-05a at aesthetic_joint.profile
    aesthetic_joint: {profile: square}
fails AJT-05b at aesthetic_joint.cut_tool
    aesthetic_joint: {cut_tool: hand_saw}
fails AJT-05c at aesthetic_joint.depth
    aesthetic_joint: {profile: v, width: 1/2 in, depth: 3/4 in}
"""

from specgen.judging.rule import CAUTION, STOP, Rule

RULE = Rule(
    "AJT-05",
    "V-shaped aesthetic joints, cut clean",
    remedy="Change profile or tool.",
    steps="aesthetic_joints",
    documents="D07 D08",
)

RULE.clause(
    "a",
    STOP,
    "The aesthetic joints are {found}; only a V gives crisp lines that spray evenly.",
    when="aesthetic_joint.profile != v",
    wanted="v",
    basis="practice",
)

RULE.clause(
    "b",
    STOP,
    "The aesthetic joints are cut by {found}; only router or hot groove tool gives a clean V.",
    when="aesthetic_joint.cut_tool not in {router, hot_groove}",
    basis="practice",
)

RULE.clause(
    "c",
    CAUTION,
    "The V is {found} deep, deeper than it is wide ({wanted}), and the spray does not reach its bottom.",
    when="aesthetic_joint.profile = v and aesthetic_joint.depth > aesthetic_joint.width",
    basis="practice",
)
