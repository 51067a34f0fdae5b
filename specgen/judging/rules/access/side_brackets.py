"""Side brackets of the scaffold are off the wall before a coat is sprayed.

Why: planks on side brackets put the painter at the wall, and the gun must stay off it. The platform that is left
keeps its gap to the face (access.*.face_gap), and the gun its distance (AIR-05).

passes
    access: {A1: {kind: frame_scaffold, side_brackets_at_spray: no}}
fails ACC-04a at access.A1.side_brackets_at_spray
    access: {A1: {kind: frame_scaffold, side_brackets_at_spray: yes}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "ACC-04",
    "Side brackets removed before spraying",
    remedy="Remove brackets and planks before priming; measure the gap to the wall again and guard the edge.",
    steps="protection",
    documents="D08 D15",
)

RULE.clause(
    "a",
    STOP,
    ("Planks on side brackets bring the sprayer too close to the wall; hold the gun at least {wanted} off it."),
    when="means_of_access.side_brackets_at_spray = yes",
    wanted="limit",
    limit="spray.distance",
)
