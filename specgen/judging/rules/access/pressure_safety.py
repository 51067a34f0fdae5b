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

from specgen.judging.rule import CAUTION, STOP, Rule

RULE = Rule(
    "ACC-08",
    "Pressure held safely",
    remedy="Fit it; blow-down air under 30 psi.",
    steps="equipment setup",
    documents="D15",
    manual=__doc__,
)


RULE.clause(
    "a",
    STOP,
    "An air hose with a bore of {found} has no safety device; above {wanted} it is due.",
    each="hoses",
    when="hose.use in {air_supply, air_gun} and hose.safety_device = no and safety.rules = us_osha and "
    "hose.bore > limit",
    limit="hose.safety_bore",
    lift="never",
)


RULE.clause(
    "b",
    CAUTION,
    "An air hose with a bore of {found} has no safety device; above {wanted} it is due: local law governs, confirm.",
    each="hoses",
    when="hose.use in {air_supply, air_gun} and hose.safety_device = no and safety.rules = other and hose.bore > limit",
    limit="hose.safety_bore",
)


RULE.clause(
    "c",
    STOP,
    "The pressure tank has no relief valve.",
    when="safety.rules = us_osha and tank.relief_valve = no",
    basis="memory",
    lift="never",
)


RULE.clause(
    "d",
    CAUTION,
    "The pressure tank has no relief valve: local law governs, confirm.",
    when="safety.rules = other and tank.relief_valve = no",
    basis="memory",
)
