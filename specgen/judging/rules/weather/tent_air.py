"""A tent is heated without fumes and its air is changed.

Why: an open flame gives off water and soot, which dull the coat, and gases that harm the crew. In still air
moisture and mist stay where they are, and the coat dries slowly.

passes
    shade: {T1: {kind: tent, heater: indirect_vented, ventilated: yes}}
fails WEA-08a at shade.T1.heater
    shade: {T1: {kind: tent, heater: direct_fired}}
fails WEA-08b at shade.T1.ventilated
    shade: {T1: {kind: tent, ventilated: no}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found
from specgen.judging.three_valued import every

RULE = Rule(
    "WEA-08",
    "Heat and air in a tent",
    remedy="Indirect vented heat, changed air.",
    steps="protection",
    documents="D08 D15",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "Burner fumes and moisture in the tent dull the coat and harm the crew: confirm.",
    each="shade",
    needs="shade.*.kind shade.*.heater",
    basis="memory",
)
def open_flame(shade: Any) -> Iterator[Found]:
    """The tent is heated by an open flame."""
    if every(lambda: shade.kind == "tent", lambda: shade.heater == "direct_fired"):
        yield found(shade.heater)


@RULE.clause(
    "b",
    CAUTION,
    "The tent is not ventilated, so moisture and mist stay in it: confirm.",
    each="shade",
    needs="shade.*.kind shade.*.ventilated",
    basis="memory",
)
def still_air(shade: Any) -> Iterator[Found]:
    """The air in the tent is not changed."""
    if every(lambda: shade.kind == "tent", lambda: not shade.ventilated):
        yield found(shade.ventilated)
