"""Wide air hoses have a safety device at their source, and the pressure tank has a relief valve.

Why: a wide hose that tears off lashes about with the whole compressor behind it. The federal text on hoses is
read for pneumatic power tools, so that a spray hose without the device is a caution. A tank without a valve is a bomb
beside the crew.

passes
    safety: {rules: us_osha}
    hoses: {H1: {use: air_supply, bore: 3/4 in, safety_device: yes}}
    tank: {relief_valve: yes}
fails ACC-08a at hoses.H1.bore
    safety: {rules: us_osha}
    hoses: {H1: {use: air_supply, bore: 3/4 in, safety_device: no}}
fails ACC-08b at hoses.H1.bore
    safety: {rules: other}
    hoses: {H1: {use: air_supply, bore: 3/4 in, safety_device: no}}
fails ACC-08c at tank.relief_valve
    safety: {rules: us_osha}
    tank: {relief_valve: no}
fails ACC-08d at tank.relief_valve
    safety: {rules: other}
    tank: {relief_valve: no}
"""

from specgen.judging.rule import CAUTION, GUIDE, Rule

RULE = Rule(
    "ACC-08",
    "Pressure equipment safety",
    remedy=(
        "Fit safety devices to hoses and tank; use cleaning air under {air.cleaning} with chip guards and "
        "personal protective equipment."
    ),
    steps="equipment setup",
    documents="D15",
)

BARE_HOSE = "An air hose with a bore of {found} has no safety device at its source; one is required above {wanted}"
FIT = "Fit a safety device at the source of the hose that shuts the air off if the hose fails."
WIDE_AND_BARE = "hose.use in {air_supply, air_gun} and hose.safety_device = no and hose.bore > limit"

RULE.clause(
    "a",
    CAUTION,
    f"{BARE_HOSE} on pneumatic tools.",
    when=WIDE_AND_BARE,
    under="safety.rules = us_osha",
    limit="hose.safety_bore",
    remedy=FIT,
)

RULE.clause(
    "b",
    CAUTION,
    f"{BARE_HOSE}.",
    when=WIDE_AND_BARE,
    under="safety.rules = other",
    limit="hose.safety_bore",
    remedy=f"{FIT} {GUIDE}",
)

RULE.safety_clauses(
    ("c", "d"),
    "The pressure tank has no relief valve.",
    when="tank.relief_valve = no",
    basis="memory",
    remedy=("Fit a relief valve set below the rated pressure of the tank; do not pressurize the tank without it."),
    why="a tank without a relief valve bursts when its regulator fails",
)
