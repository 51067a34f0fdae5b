"""Where light rakes a face, the mockup is judged by raking lamp.

Why: What the lamp does not show before the finish, the evening sun shows after it.

passes
    {elevations: {E1: {critical_light: yes}}, mockup: {criteria: [{name: raking_light}]}}
fails PLN-04a at elevations.E1.critical_light
    {elevations: {E1: {critical_light: yes}}, mockup: {criteria: [{name: gloss}]}}
"""

from collections.abc import Iterator
from typing import Any

from ...rule import CAUTION, Found, Rule, found

RULE = Rule(
    "PLN-04",
    "Raking lamp on the acceptance form",
    remedy="Agree numbers (suggest 1/8 in in 10 ft, 1/16 in in 24 in) and a raking-lamp look before smoothing.",
    steps="second_pass mockup",
    documents="D09 D10 D11",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "Light rakes this face and the acceptance form has no raking-lamp line: confirm.",
    needs="elevations.*.critical_light mockup.criteria.*.name",
    each="elevations",
    basis="memory",
    at="elevations.*.critical_light",
)
def no_lamp_line(elevation: Any, project: Any) -> Iterator[Found]:
    """The acceptance form has no raking-lamp line."""
    if elevation.critical_light and all(line.name != "raking_light" for line in project.mockup.criteria):
        yield found()
