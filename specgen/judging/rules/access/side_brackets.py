"""Side brackets of the scaffold are off the wall before a coat is sprayed.

Why: a bracket throws a shadow in the spray that no second pass fills, and its foot presses into the fresh
coat.

passes
    access: {A1: {kind: frame_scaffold, side_brackets_at_spray: no}}
fails ACC-04a at access.A1.side_brackets_at_spray
    access: {A1: {kind: frame_scaffold, side_brackets_at_spray: yes}}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "ACC-04",
    "Side brackets off before spraying",
    remedy="Remove before primer; safe platform re-checked.",
    steps="protection",
    documents="D08 D15",
)

RULE.clause(
    "a",
    STOP,
    "Brackets in place shade the spray and mark the wall.",
    when="means_of_access.side_brackets_at_spray = yes",
    basis="practice",
)
