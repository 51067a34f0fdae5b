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

from collections.abc import Iterator
from typing import Any

from specgen.judging.choice_groups import PLASTERED, SPRAYED
from specgen.judging.rule import STOP, Found, Rule, found
from specgen.judging.three_valued import every

RULE = Rule(
    "MOC-02",
    "Mockup made as the work is made",
    remedy="Same crew, tools, access and shade; a new crew makes a new mockup.",
    steps="mockup",
    documents="D09 D10",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "Crew {found} will spray the work but not the mockup.",
    each="crews",
    needs="crews.*.steps mockup.crew",
    basis="practice",
)
def sprayers_left_out(crew: Any, project: Any) -> Iterator[Found]:
    """A crew that sprays the work has no part in the mockup."""
    if _left_out(crew, project, SPRAYED):
        yield found(crew.mark)


@RULE.clause(
    "b",
    STOP,
    "Crew {found} will plaster the work but not the mockup.",
    each="crews",
    needs="crews.*.steps mockup.crew",
    basis="practice",
)
def plasterers_left_out(crew: Any, project: Any) -> Iterator[Found]:
    """A crew that plasters the work has no part in the mockup."""
    if _left_out(crew, project, PLASTERED):
        yield found(crew.mark)


@RULE.clause(
    "c",
    STOP,
    "A mockup with other tools proves nothing.",
    needs="mockup.same_equipment",
    basis="practice",
)
def other_tools(project: Any) -> Iterator[Found]:
    """The mockup is made with other tools."""
    if not project.mockup.same_equipment:
        yield found(project.mockup.same_equipment)


@RULE.clause(
    "d",
    STOP,
    "A mockup from other access proves nothing.",
    needs="mockup.same_access",
    basis="practice",
)
def other_access(project: Any) -> Iterator[Found]:
    """The mockup is made from other access."""
    if not project.mockup.same_access:
        yield found(project.mockup.same_access)


@RULE.clause(
    "e",
    STOP,
    "A mockup in other shade proves nothing.",
    needs="mockup.same_shade",
    basis="practice",
)
def other_shade(project: Any) -> Iterator[Found]:
    """The mockup is made in other shade."""
    if not project.mockup.same_shade:
        yield found(project.mockup.same_shade)


def _left_out(crew: Any, project: Any, steps: tuple[str, ...]) -> bool:
    """Whether a crew does any of these steps on the wall but not on the mockup."""
    return every(lambda: set(steps) & set(crew.steps), lambda: crew not in project.mockup.crew)
