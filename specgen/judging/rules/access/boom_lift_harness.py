"""Whoever works in a boom lift is tied to its basket.

Why: a boom that jolts throws a man over the rail. A body belt only restrains; it is no part of a fall arrest system.

passes
    safety: {rules: us_osha}
    access: {A1: {kind: boom_lift, fall_arrest: yes}}
fails ACC-10a at access.A1.fall_arrest
    safety: {rules: us_osha}
    access: {A1: {kind: boom_lift, fall_arrest: no}}
fails ACC-10b at access.A1.fall_arrest
    safety: {rules: other}
    access: {A1: {kind: boom_lift, fall_arrest: no}}
"""

from specgen.judging.rule import Rule

RULE = Rule(
    "ACC-10",
    "Harness in boom lifts",
    remedy=(
        "Wear a harness with the lanyard tied to the boom or basket, never to the building; use a body belt "
        "for restraint only."
    ),
    steps="site_conditions",
    documents="D08 D15",
)

RULE.safety_clauses(
    ("a", "b"),
    "Nobody in the boom lift is tied to the boom or basket.",
    when="means_of_access.kind = boom_lift and means_of_access.fall_arrest = no",
    basis="osha_boom_lift",
)
