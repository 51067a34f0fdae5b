"""Where code asks for special inspection, the contract provides for it.

Why: what is behind the board is seen once. An official who finds that nobody looked may have it opened
again.

passes
    code: {model: ibc}
    contract: {inspection_level: periodic}
    walls: {W1: {substrate: {kind: plywood}, wrb: {kind: fluid_applied}}}
fails COD-04a at contract.inspection_level
    code: {model: ibc}
    contract: {inspection_level: none}
    walls: {W1: {substrate: {kind: plywood}, wrb: {kind: fluid_applied}}}
"""

from collections.abc import Iterator
from typing import Any

from specgen.judging.rule import STOP, Found, Rule, found
from specgen.judging.three_valued import every

RULE = Rule(
    "COD-04",
    "Special inspection provided for",
    remedy="Name the agency; its points go into the inspection plan.",
    steps="site_conditions",
    documents="D11",
    manual=__doc__,
)


@RULE.clause(
    "a",
    STOP,
    "Special inspection is due and the contract provides for none.",
    lift="never",
    needs="calc.special_inspection_due contract.inspection_level",
    basis="ibc_inspection ibc_editions_memory",
)
def uninspected(project: Any, resolve: Any) -> Iterator[Found]:
    """Special inspection is due and nobody is to do it."""
    if every(
        lambda: project.contract.inspection_level == "none",
        lambda: resolve("special-inspection-due").result,
    ):
        yield found(project.contract.inspection_level)
