"""The pressure tank is lined.

Why: rust, skins and lumps of the last job come loose in a bare tank. In a smooth gloss each of them shows.

passes
    tank: {lined: yes}
fails AIR-03a at tank.lined
    tank: {lined: no}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found

RULE = Rule(
    "AIR-03",
    "Clean material in a clean tank",
    remedy="Strain every pail into a clean, lined tank; clean and dry everything after each coat.",
    steps="setup clean_equipment",
    documents="D08 D12b",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "A bare tank brings rust and dirt into the coat.",
    needs="tank.lined",
    basis="practice",
)
def bare_tank(project: Any) -> Iterator[Found]:
    """The tank has no liner."""
    if not project.tank.lined:
        yield found(project.tank.lined)
