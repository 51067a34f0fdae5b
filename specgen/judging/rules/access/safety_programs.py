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

from specgen.judging.rule import Rule

RULE = Rule(
    "ACC-07",
    "Hazard communication, respirator, and silica programs",
    remedy="Provide the written safety programs.",
    steps="site_conditions",
    documents="D15 D18",
)

RULE.safety_clauses(
    ("a", "b"),
    "The hazard communication program is missing.",
    when="package.purpose != design_draft and safety.hazcom is not given",
    basis="osha_hazcom",
    remedy="Attach the written hazard communication program with the safety data sheets.",
)

RULE.safety_clauses(
    ("c", "d"),
    "Spraying is planned without a written respiratory protection program.",
    when="package.purpose != design_draft and safety.respirator_program is not given",
    basis="osha_respirator",
    remedy=("Attach the respiratory protection program: respirator selection, medical evaluation, fit test, training."),
)

RULE.safety_clauses(
    ("e", "f"),
    "Sanding and cement mixing are planned without a silica exposure control plan.",
    when="package.purpose != design_draft and safety.silica_plan is not given",
    basis="osha_silica",
    remedy="Attach the silica exposure control plan.",
)
