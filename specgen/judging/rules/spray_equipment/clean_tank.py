"""The pressure tank is lined.

Why: rust, skins and lumps of the last job come loose in a bare tank. In a smooth gloss each of them shows.

passes
    tank: {lined: yes}
fails AIR-03a at tank.lined
    tank: {lined: no}
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "AIR-03",
    "Clean material in a clean tank",
    remedy="Use a lined tank; strain every pail into it, and clean and dry it after each coat.",
    steps="setup clean_equipment",
    documents="D08 D12b",
)

RULE.clause(
    "a",
    STOP,
    "The pressure tank is not lined; bare metal brings rust and dirt into the coat.",
    when="tank.lined = no",
    basis="practice",
)
