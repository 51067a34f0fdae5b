"""The compressor gives the guns enough air at the pressure they need.

Why: a gun that starves atomizes in pulses, and each pulse lays the flakes another way. A compressor at its
end also sends hot, wet air.

passes
    compressor: {air_flow: 12 cfm, at_pressure: 80 psi}
fails AIR-01a at compressor.air_flow
    compressor: {air_flow: 9 cfm}
fails AIR-01b at compressor.at_pressure
    compressor: {at_pressure: 60 psi}
"""

from collections.abc import Iterator
from typing import Any

from ....vocabulary.comparison import less
from ...rule import STOP, Found, Rule, found

RULE = Rule(
    "AIR-01",
    "Air enough for the guns",
    remedy="Bigger machine, fewer guns at once.",
    steps="equipment",
    documents="D06 D08",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "The compressor gives {found}; {wanted} is the least.",
    needs="compressor.air_flow",
    limit="compressor.flow",
)
def little_air(project: Any, limit: Any) -> Iterator[Found]:
    """The compressor gives too little air."""
    if less(project.compressor.air_flow, limit):
        yield found(project.compressor.air_flow, wanted=limit)


@RULE.clause(
    "b",
    STOP,
    "The compressor is rated at {found}; {wanted} is the least.",
    needs="compressor.at_pressure",
    limit="compressor.pressure",
)
def low_pressure(project: Any, limit: Any) -> Iterator[Found]:
    """The compressor is rated at too low a pressure."""
    if less(project.compressor.at_pressure, limit):
        yield found(project.compressor.at_pressure, wanted=limit)
