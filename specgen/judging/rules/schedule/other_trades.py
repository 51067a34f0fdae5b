"""Trades that work at the wall come before the gloss, or work behind protection.

Why: a ladder, a wash or a mason's splash costs a whole panel, for nothing smaller can be recoated.

passes
    schedule: {later_trades: []}
fails SCH-05a at schedule.later_trades
    schedule: {later_trades: [signage, window_cleaning]}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "SCH-05",
    "Other trades complete before the gloss",
    remedy="Do this work first, or protect the finish and list the work in the inspection plan.",
    steps="site_conditions",
    documents="D14 D16",
)

RULE.clause(
    "a",
    CAUTION,
    "Later trades can damage the gloss: {found}.",
    when="schedule.later_trades is not empty",
    basis="memory",
)
