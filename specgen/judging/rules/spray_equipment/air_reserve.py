"""The compressor has air left over for leaks and reserve.

Why: couplings leak, filters clog, and a machine that runs without a pause sends hot, wet air to the gun.

passes
    site: {altitude: 500 ft}
    compressor: {air_flow: 20 cfm, rating_basis: free_air, engine_derate: 0 %/1000 ft}
    guns: {G1: {count: 1, air_flow: 12 scfm, duty: 0.6}}
fails AIR-08a at compressor.air_flow
    site: {altitude: 500 ft}
    compressor: {air_flow: 13 cfm, rating_basis: free_air, engine_derate: 0 %/1000 ft}
    guns: {G1: {count: 1, air_flow: 12 scfm, duty: 1}}
"""

from specgen.judging.guns import sum_air_flow, tell_flow
from specgen.judging.rule import CAUTION, Computed, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.typed_views import Description
from specgen.quantities.comparison import less

RULE = Rule(
    "AIR-08",
    "Air reserve",
    remedy=(
        "Use a larger compressor or receiver, and read the pressure at the gun with the trigger pulled on the mockup."
    ),
    steps="equipment",
    documents="D06 D08",
)


@RULE.test(
    "a",
    CAUTION,
    "The compressor delivers {found}; with leaks and reserve the guns need {wanted}.",
    at="compressor.air_flow",
    basis="memory",
)
def nothing_left_over(project: Description, air_supply: Computed, air_demand: Computed) -> Violations:
    """The compressor feeds the guns, and has too little left for leaks and reserve."""
    supply, demand = read_all(air_supply, air_demand)
    if less(supply.quantity, demand.quantity) and not less(supply.quantity, sum_air_flow(project)):
        yield violation(tell_flow(project, supply.quantity), wanted=tell_flow(project, demand.quantity))
