"""A crew has an output for no step but its own.

Why: the schedule gives a step to the crews that name it. An output that stands with another crew is not counted, or
counted for a crew that does not do the work.

passes
    crews: {red: {steps: [primer, gloss], rates: {gloss: 300 ft2/h}}}
fails SCH-07a at crews.red.rates.boards
    crews: {red: {steps: [primer, gloss], rates: {boards: 90 ft2/h}}}
"""

from specgen.judging.rule import NOTE, Rule, Violations, violation
from specgen.model.standard import Standards
from specgen.model.typed_views import Crew

RULE = Rule(
    "SCH-07",
    "Outputs of crews at their own steps",
    remedy="Add each step to those of the crew, or give its output to the crew that does it.",
    steps="site_conditions",
    documents="D14",
)


@RULE.test(
    "a",
    NOTE,
    "The crew has outputs for steps that are not its own: {found}.",
    each="crews",
    at="crew.rates",
    basis="practice",
)
def outputs_elsewhere(crew: Crew, standards: Standards) -> Violations:
    """A step with an output is not among the steps of the crew."""
    for step in crew.project.members.get((*crew.path, "rates"), ()):
        if step not in crew.steps:
            yield violation(_name(standards.steps[step].title), at=(*crew.path, "rates", step))


def _name(title: str) -> str:
    """The title of a step within a sentence."""
    return title if title[1:2].isupper() else f"{title[:1].lower()}{title[1:]}"
