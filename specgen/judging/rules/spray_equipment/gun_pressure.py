"""The hoses leave each gun the pressure it needs.

Why: what is read at the compressor is not what reaches the gun. A long, thin hose eats the pressure, the fan
shrinks, and the film grows coarse.

passes
    site: {altitude: 0 ft}
    compressor: {at_pressure: 80 psi}
    spray: {atomizing_pressure: 50 psi}
    guns: {G1: {count: 1, air_flow: 10 scfm, inlet_pressure: 40 psi}}
    hoses:
      H1: {use: air_gun, length: 12 ft, bore: 3/8 in}
      H2: {use: air_supply, length: 50 ft, bore: 1/2 in}
fails AIR-02a at guns.G1.inlet_pressure
    site: {altitude: 0 ft}
    compressor: {at_pressure: 80 psi}
    spray: {atomizing_pressure: 45 psi}
    guns: {G1: {count: 1, air_flow: 12 scfm, inlet_pressure: 40 psi}}
    hoses:
      H1: {use: air_gun, length: 12 ft, bore: 1/4 in}
      H2: {use: air_supply, length: 50 ft, bore: 1/2 in}
"""

from specgen.judging.rule import STOP, Computed, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.typed_views import SprayGun
from specgen.quantities.comparison import less

RULE = Rule(
    "AIR-02",
    "Pressure at the gun",
    remedy=(
        "Use a hose of {hose.bore} bore or more, up to {hose.length} long; read the pressure at the gun with "
        "the trigger pulled."
    ),
    steps="equipment",
    documents="D06 D08",
)


@RULE.test(
    "a",
    STOP,
    "Hose loss leaves {found} at the gun; minimum {wanted}.",
    at="spray_gun.inlet_pressure",
    basis="hose_loss",
)
def hose_starves_gun(gun: SprayGun, gun_pressure: Computed) -> Violations:
    """What the hoses leave is less than the gun needs."""
    left, needed = read_all(gun_pressure, lambda: gun.inlet_pressure)
    if less(left.quantity, needed):
        yield violation(left.rounded, wanted=needed)
