"""Every field the package owes is filled before the package goes out.

Why: a reader of the package cannot tell a value left open from one that was forgotten. In a draft
the gaps are listed; a set that is handed in may have none.

fails SUB-09a at walls.W1.insulation.kind
    package: {purpose: design_draft}
fails SUB-09b at walls.W1.insulation.kind
    package: {purpose: mockup_submittal}
"""

from specgen.judging.rule import NOTE, STOP, Rule

RULE = Rule(
    "SUB-09",
    "Required values given",
    remedy="Give the value and where it comes from.",
    steps="site_conditions",
    documents="D19",
)

RULE.open_items("a", NOTE, "{path} is still open; needed for {clauses}.", basis="practice contract_review")

RULE.open_items(
    "b", STOP, "{path} is still open; needed for {clauses}.", basis="practice contract_review", lift="never"
)
