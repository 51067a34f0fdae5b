"""No second sun, thin air or dark shade brings the board near the heat at which it softens.

Why: the usual heat figures know one sun at low altitude and a color that is not too dark. Glass across the
street, a site high up, or a shade at the edge takes up the margin they leave.

passes
    climate: {hot_air: 95 F, peak_wall_irradiance: 800 W/m2}
    site: {altitude: 500 ft}
    walls: {W1: {insulation: {kind: eps}}}
    elevations: {E1: {color: C1, reflecting_surface_near: no}}
    colors: {C1: {lrv: 54, solar_reflectance: 0.60, emittance: 0.85}}
fails HEA-03a at elevations.E1.color
    climate: {hot_air: 95 F, peak_wall_irradiance: 800 W/m2}
    walls: {W1: {insulation: {kind: eps}}}
    elevations: {E1: {color: C1, reflecting_surface_near: no}}
    colors: {C1: {solar_reflectance: 0.38, emittance: 0.85}}
fails HEA-03b at elevations.E1.color
    climate: {hot_air: 95 F, peak_wall_irradiance: 800 W/m2}
    walls: {W1: {insulation: {kind: eps}}}
    elevations: {E1: {color: C1, reflecting_surface_near: no}}
    colors: {C1: {solar_reflectance: 0.50, emittance: 0.30}}
fails HEA-03c at elevations.E1.reflecting_surface_near
    elevations: {E1: {reflecting_surface_near: yes}}
fails HEA-03d at site.altitude
    site: {altitude: 5200 ft}
fails HEA-03e at colors.C1.lrv
    colors: {C1: {lrv: 22}}
"""

from collections.abc import Callable, Iterator
from typing import Any

from specgen.judging.rule import CAUTION, Found, Rule, found
from specgen.quantities.comparison import less, more
from specgen.quantities.quantity import apart, rounded

RULE = Rule(
    "HEA-03",
    "Margin below the heat the board bears",
    remedy="Source's written yes for this color and face; lighter color.",
    steps="gloss",
    documents="D05 D06",
    manual=__doc__,
)


@RULE.clause(
    "a",
    CAUTION,
    "The heat margin is {found}; {wanted} is wanted.",
    each="elevations",
    needs="walls.*.insulation.service_limit calc.face_heat",
    at="elevations.*.color",
    limit="board.heat_margin",
    basis="computed",
)
def thin_margin(elevation: Any, resolve: Any, limit: Any) -> Iterator[Found]:
    """The hottest face comes near the heat at which the board softens."""
    margin = apart(elevation.wall.insulation.service_limit, resolve("face-heat").quantity)
    if less(margin, limit):
        yield found(rounded(margin), wanted=limit)


@RULE.clause(
    "b",
    CAUTION,
    "In still air the face reaches {found}; the board softens at {wanted}.",
    each="elevations",
    needs="calc.face_heat_still walls.*.insulation.service_limit",
    at="elevations.*.color",
    basis="computed",
)
def softens_in_still_air(elevation: Any, resolve: Any) -> Iterator[Found]:
    """With no wind to cool it the face is no cooler than the heat at which the board softens."""
    still, limit = resolve("face-heat-still"), elevation.wall.insulation.service_limit
    if not less(still.quantity, limit):
        yield found(still.rounded, wanted=limit)


@RULE.clause(
    "c",
    CAUTION,
    "Glass or metal near this face sends a second sun onto it.",
    each="elevations",
    needs="elevations.*.reflecting_surface_near",
    basis="trade_eps_heat",
)
def second_sun(elevation: Any) -> Iterator[Found]:
    """A reflecting surface stands near the face."""
    if elevation.reflecting_surface_near:
        yield found(elevation.reflecting_surface_near)


@RULE.clause(
    "d",
    CAUTION,
    "The site lies at {found}; above {wanted} the sun is stronger than usual figures.",
    needs="site.altitude",
    limit="altitude.strong_sun",
    basis="trade_eps_heat",
)
def high_site(project: Any, limit: Any) -> Iterator[Found]:
    """The site lies so high that the sun is stronger."""
    if more(project.site.altitude, limit):
        yield found(project.site.altitude, wanted=limit)


@RULE.clause(
    "e",
    CAUTION,
    "Light reflectance is {found} %, near the usual limit over EPS.",
    each="colors",
    needs="colors.*.lrv",
    limit="color.lrv_cautious",
)
def rather_dark(color: Any, limit: Any, limits: Callable[[str], Any]) -> Iterator[Found]:
    """The shade is one of those just above the usual limit."""
    if less(color.lrv, limit) and not less(color.lrv, limits("color.lrv_least")):
        yield found(color.lrv, wanted=limit)
