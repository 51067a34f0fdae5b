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
    "Aesthetic joint profile and cutting tool",
    remedy="Change the profile to a V.",
    steps="aesthetic_joints",
    documents="D07 D08",
)

RULE.clause(
    "a",
    STOP,
    "Aesthetic joint profile is {found}; only a V is crisp and sprays evenly.",
    when="aesthetic_joint.profile != v",
    wanted="v",
    basis="practice",
)

RULE.clause(
    "b",
    STOP,
    "Aesthetic joint cutting tool: {found}; only a router or a hot groove tool cuts a clean V.",
    when="aesthetic_joint.cut_tool not in {router, hot_groove}",
    basis="practice",
    remedy="Cut the joints with a router or a hot groove tool.",
)

RULE.clause(
    "c",
    CAUTION,
    "The V is {found} deep and {wanted} wide; spray does not reach the bottom of a V deeper than its width.",
    when="aesthetic_joint.profile = v and aesthetic_joint.depth > aesthetic_joint.width",
    basis="practice",
    remedy="Make the V a maximum of {wanted} deep, or widen it to {found}.",
)
