"""Damage is repaired by recoating the whole panel to a corner or joint.

Why: flakes never lie the same way twice, so a touched-up spot shows as a patch from some angle. A
corner or joint hides where the new coat begins.

passes
    finish: {repair_method: recoat_to_break}
fails FIN-11a at finish.repair_method
    finish: {repair_method: spot}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "FIN-11",
    "Repairs to a corner or joint",
    remedy="Recoat the whole panel to a corner or joint.",
    steps="acceptance",
    documents="D16",
)

RULE.clause(
    "a",
    CAUTION,
    "Spot repair is planned; a spot repair stays visible in a metallic finish.",
    when="finish.repair_method = spot",
    basis="memory",
)
