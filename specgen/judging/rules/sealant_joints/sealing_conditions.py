"""Joints are sealed in fit weather, tooled dry, and pulled by hand at the first of them.

Why: soap and frost stay in the bond, and heat opens the joint just when it is filled. The first pull tests
show it while it can still be put right.

passes
    sealants: {S1: {tooling: dry, field_tests: 10}}
    joints: {J1: {install_low: 50 F, install_high: 80 F}}
fails SLT-08a at sealants.S1.tooling
    sealants: {S1: {tooling: wet}}
fails SLT-08b at joints.J1.install_low
    joints: {J1: {install_low: 35 F}}
fails SLT-08c at joints.J1.install_high
    joints: {J1: {install_high: 100 F}}
fails SLT-08d at sealants.S1.field_tests
    sealants: {S1: {field_tests: 4}}
"""

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "SLT-08",
    "Sealing conditions and field tests",
    remedy="Install sealant between {sealant.install_cold} and {sealant.install_hot}.",
    steps="sealant",
    documents="D08 D11",
)

RULE.clause(
    "a",
    CAUTION,
    "Sealant is tooled wet, which leaves soap in the bond.",
    when="sealant.tooling = wet",
    basis="guide_eifs_p25",
    remedy="Tool the sealant dry, to a concave profile.",
)

RULE.clause(
    "b",
    CAUTION,
    "Sealing is planned down to {found}; minimum {wanted}.",
    when="joint.install_low < limit",
    limit="sealant.install_cold",
)

RULE.clause(
    "c",
    CAUTION,
    "Sealing is planned up to {found}; maximum {wanted}.",
    when="joint.install_high > limit",
    limit="sealant.install_hot",
)

RULE.clause(
    "d",
    CAUTION,
    "Pull tests planned in the first {sealant.field_test_length}: {found}; usual minimum {wanted}.",
    when="sealant.field_tests < limit",
    limit="sealant.field_tests",
    remedy="Plan one pull test in each {sealant.field_test_spacing} of the first {sealant.field_test_length}, "
    "then one in each {sealant.field_test_later}.",
    why="early pull tests show a poor bond before all joints have it",
)
