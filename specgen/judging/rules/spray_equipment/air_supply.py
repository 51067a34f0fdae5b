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

from math import ceil

from specgen.judging.guns import draw_of_gun, sum_air_flow, tell_flow
from specgen.judging.rule import STOP, Computed, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.typed_views import Description
from specgen.quantities.comparison import less
from specgen.quantities.format import format_quantity
from specgen.quantities.quantity import Quantity

RULE = Rule(
    "AIR-01",
    "Air supply for the guns",
    remedy="Use a larger compressor, or fewer guns at once.",
    steps="equipment",
    documents="D06 D08",
)

RULE.clause(
    "a",
    STOP,
    "The compressor delivers {found}; minimum {wanted}.",
    when="compressor.air_flow < limit",
    limit="compressor.flow",
    remedy="Use a compressor of at least {compressor.flow}.",
)

RULE.clause(
    "b",
    STOP,
    "The compressor is rated at {found}; minimum {wanted}.",
    when="compressor.at_pressure < limit",
    limit="compressor.pressure",
    remedy="Use a compressor rated at {compressor.pressure} or more.",
)


@RULE.test(
    "c",
    STOP,
    "At this altitude the compressor delivers {found}; the guns draw {wanted} before leaks and reserve.",
    at="compressor.air_flow",
    basis="computed",
    remedy="Use a larger compressor, or run fewer guns at once.",
)
def guns_starve(project: Description, air_supply: Computed) -> Violations:
    """The guns draw more than the compressor gives at the site."""
    supply, draw = read_all(air_supply, lambda: sum_air_flow(project))
    if less(supply.quantity, draw):
        remedy = _tell_way_out(project, supply.quantity, draw)
        yield violation(tell_flow(project, supply.quantity), wanted=tell_flow(project, draw), remedy=remedy)


def _tell_way_out(project: Description, supply: Quantity, draw: Quantity) -> str:
    """How many guns the air feeds, and the rating of a compressor that would feed them all."""
    rated = project.compressor.air_flow * (draw.amount / supply.amount)
    machine = f"a compressor rated, on the same basis, at a minimum of {format_quantity(_round_up(rated), rated.unit)}"
    fed = supply.amount // max(draw_of_gun(gun).amount for gun in project.guns)
    if not fed:
        return f"Set up {machine}; the air delivered is not enough for one gun."
    return f"Spray with {fed} gun{'' if fed == 1 else 's'} at a time, or set up {machine}."


def _round_up(flow: Quantity) -> Quantity:
    return Quantity.of(ceil(flow.to(flow.unit)), flow.unit)
