"""The acceptance form has a line for everything that is judged.

Why: what no line speaks of is settled on the scaffold, by whoever is tired last. A number agreed beforehand
costs nothing.

passes
    package: {purpose: mockup_submittal}
    mockup:
      criteria:
        [{name: flatness}, {name: aesthetic_joint}, {name: gloss}, {name: color}, {name: film}, {name: adhesion},
         {name: look}, {name: sealant}]
fails MOC-05a at mockup.criteria.*.name
    package: {purpose: mockup_submittal}
    mockup: {criteria: [{name: gloss}, {name: color}]}
"""

from specgen.judging.rule import STOP, Rule, Violations, is_draft, lacks, violation
from specgen.model.typed_views import Description

RULE = Rule(
    "MOC-05",
    "Measured acceptance criteria",
    remedy="State method, instrument, limit, and readings for each.",
    steps="mockup acceptance",
    documents="D09 D10",
)

JUDGED = ("flatness", "aesthetic_joint", "gloss", "color", "film", "adhesion", "look", "sealant")


@RULE.test(
    "a",
    STOP,
    "No measured acceptance criterion is given for {found:or}.",
    at="mockup.criteria.*.name",
    basis="practice aama_view",
)
def left_to_taste(project: Description) -> Violations:
    """Something that is judged has no line of its own."""
    if is_draft(project):
        return
    names = [str(line.name) for line in project.mockup.criteria]
    missing = lacks(tuple(judged for judged in JUDGED if any(name.startswith(judged) for name in names)), JUDGED)
    if missing:
        yield violation(missing)
