"""Every pipe, duct or bracket through the face has a sealed joint around it.

Why: it moves apart from the lamina, and a coat drawn up to it cracks all around. Water then follows the
pipe into the wall.

passes
    details: {P1: {kind: penetration, sealed: yes}}
fails WAT-05a at details.P1.sealed
    details: {P1: {kind: penetration, sealed: no}}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "WAT-05",
    "Sealed joint at every penetration",
    remedy="Seal a collar to the WRB, and leave a joint minimum {joint.width_elsewhere} wide around the "
    "penetration, with backer rod and sealant.",
    steps="sealant flashings",
    documents="D07 D08",
)

RULE.clause(
    "a",
    CAUTION,
    "A pipe, duct, or bracket has no sealed joint, so water follows it into the wall.",
    when="water_detail.kind = penetration and water_detail.sealed = no",
    found="",
    basis="practice",
)
