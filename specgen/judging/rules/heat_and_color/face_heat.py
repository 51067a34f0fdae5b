"""No face grows so hot that the board beneath it softens.

Why: EPS shrinks from the coat once it softens. The face then shows every board as a shallow dish, for good.

passes
    climate: {hot_air: 95 F, peak_wall_irradiance: 800 W/m2}
    site: {latitude: 40 deg, altitude: 500 ft}
    colors: {C1: {solar_reflectance: 0.55, emittance: 0.85}}
    walls: {W1: {insulation: {kind: eps}}}
    elevations: {E1: {color: C1, facing: W, reflecting_surface_near: no}}
fails HEA-02a at elevations.E1.color
    climate: {hot_air: 95 F, peak_wall_irradiance: 800 W/m2}
    site: {latitude: 40 deg, altitude: 500 ft}
    colors: {C1: {solar_reflectance: 0.25, emittance: 0.30}}
    walls: {W1: {insulation: {kind: eps}}}
    elevations: {E1: {color: C1, facing: W, reflecting_surface_near: no}}
"""

from specgen.judging.rule import STOP, Computed, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.typed_views import Elevation

RULE = Rule(
    "HEA-02",
    "Face temperature below maximum use temperature of the board",
    remedy="Use a color of higher solar reflectance or emittance, or another cladding on that face.",
    steps="boards gloss",
    documents="D06",
)


@RULE.test(
    "a",
    STOP,
    "The face reaches {found}; the board softens at {wanted}.",
    at="elevation.color",
    basis="trade_eps_heat computed",
    lift="never",
    step="gloss",
)
def board_softens(elevation: Elevation, face_heat: Computed) -> Violations:
    """The hottest face is no cooler than the heat at which the board softens."""
    heat, limit = read_all(face_heat, lambda: elevation.wall.insulation.service_limit)
    # The figure that is printed is the one that is held against the limit.
    if heat.rounded >= limit:
        yield violation(heat.rounded, wanted=limit)
