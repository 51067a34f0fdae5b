"""Where light rakes the face, the acceptance form has a raking-light inspection.

Why: a straightedge misses what low sun finds. Who looks only after the gloss finds it too late, so the lamp
comes before the smoothing coats.

passes
    elevations: {E1: {critical_light: yes}}
    mockup: {criteria: [{name: flatness}, {name: raking_light}]}
fails PLN-04a at elevations.E1.critical_light
    elevations: {E1: {critical_light: yes}}
    mockup: {criteria: [{name: flatness}]}
"""

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.absence import all_known, any_of
from specgen.model.project import asked_once
from specgen.model.typed_views import AcceptanceCriterion, Description, Elevation

RULE = Rule(
    "PLN-04",
    "Raking-light inspection",
    remedy="Add a raking-light inspection before smoothing, and agree on flatness limits: maximum "
    "{flatness.long} in {straightedge.long} and {flatness.short} in {straightedge.short} suggested.",
    steps="second_pass mockup",
    documents="D09 D10 D11",
)


@RULE.test(
    "a",
    CAUTION,
    "Light rakes this face, and the acceptance form has no raking-light inspection.",
    at="elevation.critical_light",
    basis="memory",
)
def no_raking_lamp(elevation: Elevation, project: Description) -> Violations:
    """Light rakes the face and no line of the form speaks of the lamp."""
    if all_known(lambda: elevation.critical_light, lambda: not _has_lamp(project)):
        yield violation(elevation.critical_light)


@asked_once
def _has_lamp(project: Description) -> bool:
    """Whether a line of the acceptance form is the raking lamp's."""
    return any_of(project.mockup.criteria, _is_lamp)


def _is_lamp(line: AcceptanceCriterion) -> bool:
    return bool(line.name == "raking_light")
