"""Wash water is contained and hauled, and never reaches a storm drain.

Why: what goes into a storm drain comes out in a stream, untreated. Paint in it harms the water, and it
brings the owner and the applicator a fine.

passes
    protection: {wash_water: contained}
fails ACC-11a at protection.wash_water
    protection: {wash_water: storm_drain}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "ACC-11",
    "Wash water kept out of storm drains",
    remedy="Contain wash water and haul it off as local law requires.",
    steps="clean_equipment",
    documents="D08 D15",
)

RULE.clause(
    "a",
    STOP,
    "Wash water reaches a storm drain.",
    when="protection.wash_water = storm_drain",
    basis="practice",
    lift="never",
)
