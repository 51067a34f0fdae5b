"""The board gives the resistance the energy code asks for.

Why: What the board lacks must be found elsewhere in the wall before it is bid.

passes
    {walls: {W1: {insulation: {r_value: R-7.2}}}, code: {required_r_value: R-7}}
fails INS-05a at walls.W1.insulation.r_value
    {walls: {W1: {insulation: {r_value: R-5}}}, code: {required_r_value: R-7.5}}
"""

from collections.abc import Iterator
from typing import Any

from ....vocabulary.comparison import less
from ...rule import CAUTION, Found, Rule, found

RULE = Rule(
    "INS-05",
    "Resistance of the insulation",
    remedy="More insulation; permeance of the whole coat; analysis over a year.",
    steps="boards",
    documents="D06",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "Insulation gives {found}; the energy code asks for {wanted}.",
    needs="walls.*.insulation.r_value code.required_r_value",
    each="walls",
    basis="memory",
    at="walls.*.insulation.r_value",
)
def too_little(wall: Any, project: Any) -> Iterator[Found]:
    """The board gives less than the code asks for."""
    if less(wall.insulation.r_value, project.code.required_r_value):
        yield found(wall.insulation.r_value, wanted=project.code.required_r_value)
