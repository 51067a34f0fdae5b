"""Ties of the scaffold sit in movement joints or openings.

Why: a tie in the field leaves a hole when the scaffold comes down. The patch in the gloss is there for
good.

passes
    access: {A1: {kind: frame_scaffold, tie_location: opening}}
fails ACC-03a at access.A1.tie_location
    access: {A1: {kind: frame_scaffold, tie_location: field_of_wall}}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "ACC-03",
    "Scaffold ties outside the wall face",
    remedy="Set the ties in movement joints or openings.",
    steps="site_conditions",
    documents="D07 D08",
)

RULE.clause(
    "a",
    CAUTION,
    "Scaffold ties are planned in the field of the wall; tie holes leave visible patches in the gloss.",
    when="means_of_access.tie_location = field_of_wall",
    basis="practice",
)
