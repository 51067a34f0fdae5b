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

from specgen.judging.rule import CAUTION, Rule

RULE = Rule(
    "WEA-08",
    "Heat and air in tents",
    remedy="Heat the tent with indirect, vented heat, and change its air.",
    steps="protection",
    documents="D08 D15",
)

RULE.clause(
    "a",
    CAUTION,
    "Burner fumes and moisture in the tent dull the coat and harm the crew.",
    when="shading.kind = tent and shading.heater = direct_fired",
    basis="memory",
    remedy="Use an indirect, vented heater.",
)

RULE.clause(
    "b",
    CAUTION,
    "The tent is not ventilated, so moisture and overspray stay in it.",
    when="shading.kind = tent and shading.ventilated = no",
    basis="memory",
    remedy="Exhaust the tent, and let fresh air in.",
    why="moisture and overspray that cannot leave the tent settle on the coat",
)
