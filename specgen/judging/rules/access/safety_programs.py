"""The hazard communication, respirator and silica programs are in the package.

Why: spraying fills the air with mist, and sanding and mixing cement fill it with silica dust. The
written programs say who wears what and who looks after it.

passes
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha, hazcom: A1, respirator_program: A2, silica_plan: A3}
    attachments: {A1: {kind: program}, A2: {kind: program}, A3: {kind: program}}
fails ACC-07a at safety.hazcom
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
fails ACC-07b at safety.hazcom
    package: {purpose: mockup_submittal}
    safety: {rules: other}
fails ACC-07c at safety.respirator_program
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
fails ACC-07e at safety.silica_plan
    package: {purpose: mockup_submittal}
    safety: {rules: us_osha}
"""

from specgen.judging.rule import CAUTION, STOP, Rule

RULE = Rule(
    "ACC-07",
    "Hazard, respirator and silica programs",
    remedy="Add the programs.",
    steps="site_conditions",
    documents="D15 D18",
    manual=__doc__,
)


RULE.clause(
    "a",
    STOP,
    "The hazard communication program is missing.",
    when="package.purpose != design_draft and safety.hazcom is not given and safety.rules = us_osha",
    found="",
    at="safety.hazcom",
    basis="osha_hazcom_memory",
    lift="never",
)


RULE.clause(
    "b",
    CAUTION,
    "The hazard communication program is missing: local law governs, confirm.",
    when="package.purpose != design_draft and safety.hazcom is not given and safety.rules = other",
    found="",
    at="safety.hazcom",
    basis="osha_hazcom_memory",
)


RULE.clause(
    "c",
    STOP,
    "Spraying is planned without a respirator program.",
    when="package.purpose != design_draft and safety.respirator_program is not given and safety.rules = us_osha",
    found="",
    at="safety.respirator_program",
    basis="osha_respirator_memory",
    lift="never",
)


RULE.clause(
    "d",
    CAUTION,
    "Spraying is planned without a respirator program: local law governs, confirm.",
    when="package.purpose != design_draft and safety.respirator_program is not given and safety.rules = other",
    found="",
    at="safety.respirator_program",
    basis="osha_respirator_memory",
)


RULE.clause(
    "e",
    STOP,
    "Sanding and cement mixing are planned without a silica plan.",
    when="package.purpose != design_draft and safety.silica_plan is not given and safety.rules = us_osha",
    found="",
    at="safety.silica_plan",
    basis="osha_silica_memory",
    lift="never",
)


RULE.clause(
    "f",
    CAUTION,
    "Sanding and cement mixing are planned without a silica plan: local law governs, confirm.",
    when="package.purpose != design_draft and safety.silica_plan is not given and safety.rules = other",
    found="",
    at="safety.silica_plan",
    basis="osha_silica_memory",
)
