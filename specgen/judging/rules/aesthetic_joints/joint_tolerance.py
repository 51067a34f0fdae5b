"""Aesthetic joints differ from one another by less than the eye can see.

Why: the lines are the only thing on a gloss wall that stands still. Two that differ are compared at every
look.

passes
    aesthetic_joint: {tolerance: 1/16 in}
fails AJT-06a at aesthetic_joint.tolerance
    aesthetic_joint: {tolerance: 1/8 in}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "AJT-06",
    "Aesthetic joint tolerance",
    remedy="Reduce the tolerance to {aesthetic_joint.tolerance}, and cut with one template from a common datum "
    "around the building.",
    steps="aesthetic_joints",
    documents="D07 D10",
)

RULE.clause(
    "a",
    CAUTION,
    "Aesthetic joint tolerance is {found}; maximum {wanted}, above which joints do not look alike.",
    when="aesthetic_joint.tolerance > limit",
    basis="memory",
    limit="aesthetic_joint.tolerance",
)
