"""Gloss is read at the angle that suits how glossy the face is.

Why: at 60 degrees very glossy faces all read much alike, and so do very dull ones. A flatter or
steeper reading tells them apart.

passes
    gloss_target: {angle: 60, units: 70}
fails HEA-08a at gloss_target.units
    gloss_target: {angle: 60, units: 85}
fails HEA-08b at gloss_target.units
    gloss_target: {angle: 60, units: 8}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "HEA-08",
    "Gloss measuring angle",
    remedy="Specify the gloss at 20 degrees, with a tolerance; 5 units either way is usual.",
    steps="mockup acceptance",
    documents="D09 D10",
)

RULE.clause(
    "a",
    CAUTION,
    "A gloss of {found} units is specified at 60 degrees; above {wanted} units it is measured at 20 degrees.",
    when="gloss_target.angle = 60 and gloss_target.units > limit",
    limit="gloss.angle_60_most",
)

RULE.clause(
    "b",
    CAUTION,
    "A gloss of {found} units is specified at 60 degrees; below {wanted} units it is measured at 85 degrees.",
    when="gloss_target.angle = 60 and gloss_target.units < limit",
    limit="gloss.angle_60_least",
    remedy="Specify the gloss at 85 degrees, with a tolerance; 5 units either way is usual.",
)
