"""Where the code requires special inspection, the contract provides for it.

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

from specgen.judging.rule import STOP, LookedUp, Rule, Violations, violation
from specgen.model.absence import all_known
from specgen.model.typed_views import Description

RULE = Rule(
    "COD-04",
    "Special inspection",
    remedy="Name the special inspection agency, and add its inspections to the inspection plan.",
    steps="site_conditions",
    documents="D11",
)


@RULE.test(
    "a",
    STOP,
    "Special inspection is required, and the contract provides for none.",
    at="contract.inspection_level",
    basis="ibc_inspection_due",
    lift="never",
)
def uninspected(project: Description, special_inspection_due: LookedUp) -> Violations:
    """Special inspection is due and nobody is to do it."""
    if all_known(lambda: project.contract.inspection_level == "none", lambda: special_inspection_due().result):
        yield violation(project.contract.inspection_level)
