"""Wide air hoses have a safety device at their source, and the pressure tank has a relief valve.

Why: a wide hose that tears off lashes about with the whole compressor behind it. A tank without a valve is
a bomb beside the crew.

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

from specgen.judging.rule import Rule

RULE = Rule(
    "ACC-08",
    "Pressure held safely",
    remedy="Fit it; blow-down air under {air.cleaning}.",
    steps="equipment setup",
    documents="D15",
)

RULE.safety_clauses(
    ("a", "b"),
    "An air hose with a bore of {found} has no safety device; above {wanted} it is due.",
    when="hose.use in {air_supply, air_gun} and hose.safety_device = no and hose.bore > limit",
    limit="hose.safety_bore",
)

RULE.safety_clauses(
    ("c", "d"),
    "The pressure tank has no relief valve.",
    when="tank.relief_valve = no",
    basis="memory",
)
