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
    "Gloss read at the right angle",
    remedy="60 degrees in general, 20 above 70 units, 85 below 10; 5 units either way is usual.",
    steps="mockup acceptance",
    documents="D09 D10",
)

RULE.clause(
    "a",
    CAUTION,
    "A gloss of {found} is read at 20 degrees, not 60: confirm.",
    when="gloss_target.angle = 60 and gloss_target.units > limit",
    limit="gloss.angle_60_most",
)

RULE.clause(
    "b",
    CAUTION,
    "A gloss of {found} is read at 85 degrees, not 60: confirm.",
    when="gloss_target.angle = 60 and gloss_target.units < limit",
    limit="gloss.angle_60_least",
)
