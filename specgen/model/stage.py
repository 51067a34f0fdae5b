"""The stages of a project, in their order, and the purpose that a package of each serves."""

PURPOSES = {
    "verdict": "design_draft",
    "mockup": "mockup_submittal",
    "work": "work_submittal",
    "closeout": "closeout",
}
STAGES = tuple(PURPOSES)
