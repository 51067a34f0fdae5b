"""What overspray may reach is known before spraying, and kept clear or covered.

Why: mist of a metal-look coat drifts far and sets on paint and glass. A row of parked cars costs more than
the wall.

passes
    site: {surroundings: [dust]}
fails ACC-09a at site.surroundings
    site: {surroundings: [vehicles_below]}
fails ACC-09b at site.surroundings
    site: {surroundings: [public_way_below]}
fails ACC-09c at site.surroundings
    site: {surroundings: [neighbors_close]}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "ACC-09",
    "Overspray protection",
    remedy="Identify overspray exposures; assign protection and a wind watch.",
    steps="site_conditions protection",
    documents="D05 D08 D15",
)

RULE.clause(
    "a",
    CAUTION,
    "Vehicles are parked below, within reach of overspray.",
    when="site.surroundings has vehicles_below",
    found="vehicles_below",
    basis="practice",
    step="protection",
    remedy="Move or cover the vehicles, hold the exclusion distance, and keep a wind watch.",
)

RULE.clause(
    "b",
    CAUTION,
    "People pass below, within reach of overspray.",
    when="site.surroundings has public_way_below",
    found="public_way_below",
    basis="practice",
    step="protection",
    remedy="Close the area below, post notices, hold the exclusion distance, and keep a wind watch.",
)

RULE.clause(
    "c",
    CAUTION,
    "Neighboring walls and glass are within reach of overspray.",
    when="site.surroundings has neighbors_close",
    found="neighbors_close",
    basis="practice",
    step="protection",
    remedy="Notify the neighbors, cover their walls and glass, and keep a wind watch.",
)
