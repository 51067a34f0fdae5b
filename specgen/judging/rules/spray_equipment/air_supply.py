"""The compressor gives the guns enough air at the pressure they need.

Why: a gun that starves atomizes in pulses, and each pulse lays the flakes another way. A compressor at its
end also sends hot, wet air.

passes
    compressor: {air_flow: 12 cfm, at_pressure: 80 psi}
fails AIR-01c at compressor.air_flow
    site: {altitude: 5200 ft}
    compressor: {air_flow: 12 cfm, rating_basis: free_air, engine_derate: 0 %/1000 ft}
    guns: {G1: {count: 1, air_flow: 12 scfm, duty: 1}}
fails AIR-01a at compressor.air_flow
    compressor: {air_flow: 9 cfm}
fails AIR-01b at compressor.at_pressure
    compressor: {at_pressure: 60 psi}
"""

from specgen.judging.guns import drawn
from specgen.judging.rule import STOP, Computed, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.typed_views import Description
from specgen.quantities.comparison import less
from specgen.quantities.quantity import round_quantity

RULE = Rule(
    "AIR-01",
    "Air enough for the guns",
    remedy="Bigger machine, fewer guns at once.",
    steps="equipment",
    documents="D06 D08",
)

RULE.clause(
    "a",
    STOP,
    "The compressor gives {found}; {wanted} is the least.",
    when="compressor.air_flow < limit",
    limit="compressor.flow",
)

RULE.clause(
    "b",
    STOP,
    "The compressor is rated at {found}; {wanted} is the least.",
    when="compressor.at_pressure < limit",
    limit="compressor.pressure",
)


@RULE.test(
    "c",
    STOP,
    "At this altitude the compressor gives {found}; the guns draw {wanted} without leaks or reserve.",
    at="compressor.air_flow",
    basis="computed",
)
def guns_starve(project: Description, air_supply: Computed) -> Violations:
    """The guns draw more than the compressor gives at the site."""
    supply, draw = read_all(air_supply, lambda: drawn(project))
    if less(supply.quantity, draw):
        yield violation(supply.rounded, wanted=round_quantity(draw))
