"""The mockup is made by the crews, with the tools, from the access and in the shade of the work.

Why: the look of a sprayed flake coat lies in the hand, the gun and the light it is made in. A
mockup made otherwise promises what the wall cannot keep.

passes
    crews: {red: {steps: [second_pass, primer, gloss]}}
    mockup: {crew: [red], same_equipment: yes, same_access: yes, same_shade: yes}
fails MOC-02a at mockup.crew
    crews: {red: {steps: [second_pass]}, blue: {steps: [primer, gloss]}}
    mockup: {crew: [red]}
fails MOC-02b at mockup.crew
    crews: {red: {steps: [smoothing_1, smoothing_2]}, blue: {steps: [primer, gloss]}}
    mockup: {crew: [blue]}
fails MOC-02c at mockup.same_equipment
    mockup: {same_equipment: no}
fails MOC-02d at mockup.same_access
    mockup: {same_access: no}
fails MOC-02e at mockup.same_shade
    mockup: {same_shade: no}
"""

from specgen.judging.choice_groups import PLASTERED, SPRAYED
from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.absence import all_known
from specgen.model.typed_views import Crew, Description

RULE = Rule(
    "MOC-02",
    "Mockup made with the means of the work",
    remedy="Build the mockup with the crew, equipment, access, and shade of the work.",
    steps="mockup",
    documents="D04 D09 D10",
)


@RULE.test(
    "a",
    STOP,
    "Crew {found} will spray the work but not the mockup.",
    each="crews",
    at="mockup.crew",
    basis="practice",
    remedy="Let the crew spray part of the mockup; a change in crew requires a new mockup.",
)
def sprayers_left_out(crew: Crew, project: Description) -> Violations:
    """A crew that sprays the work has no part in the mockup."""
    if _left_out(crew, project, SPRAYED):
        yield violation(crew.mark)


@RULE.test(
    "b",
    STOP,
    "Crew {found} will plaster the work but not the mockup.",
    each="crews",
    at="mockup.crew",
    basis="practice",
    remedy="Let the crew plaster part of the mockup; a change in crew requires a new mockup.",
)
def plasterers_left_out(crew: Crew, project: Description) -> Violations:
    """A crew that plasters the work has no part in the mockup."""
    if _left_out(crew, project, PLASTERED):
        yield violation(crew.mark)


RULE.clause(
    "c",
    STOP,
    "The mockup is planned with other equipment than the work, so it proves nothing.",
    when="mockup.same_equipment = no",
    basis="practice",
    remedy="Build it with the guns, hoses, and tank of the work.",
)

RULE.clause(
    "d",
    STOP,
    "The mockup is planned from other access than the work, so it proves nothing.",
    when="mockup.same_access = no",
    basis="practice",
    remedy="Build it from the access of the work.",
)

RULE.clause(
    "e",
    STOP,
    "The mockup is planned in other shade than the work, so it proves nothing.",
    when="mockup.same_shade = no",
    basis="practice",
    remedy="Spray it in the shade or shelter of the work.",
)


def _left_out(crew: Crew, project: Description, steps: tuple[str, ...]) -> bool:
    """Whether a crew does any of these steps on the wall but not on the mockup."""
    return all_known(lambda: set(steps) & set(crew.steps), lambda: crew not in project.mockup.crew)
