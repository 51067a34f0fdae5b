"""No second sun, thin air or dark shade brings the board near the heat at which it softens.

Why: the usual heat figures know one sun at low altitude and a color that is not too dark. Glass across the
street, a site high up, or a shade at the edge takes up the margin they leave.

passes
    site: {altitude: 500 ft}
    elevations: {E1: {reflecting_surface_near: no}}
    colors: {C1: {lrv: 34}}
fails HEA-03c at elevations.E1.reflecting_surface_near
    elevations: {E1: {reflecting_surface_near: yes}}
fails HEA-03d at site.altitude
    site: {altitude: 5200 ft}
fails HEA-03e at colors.C1.lrv
    colors: {C1: {lrv: 22}}
"""

from collections.abc import Callable, Iterator
from typing import Any

from ....vocabulary.comparison import less, more
from ...rule import CAUTION, Found, Rule, found

RULE = Rule(
    "HEA-03",
    "Margin below the heat the board bears",
    remedy="Source's written yes for this color and face; lighter color.",
    steps="gloss",
    documents="D05 D06",
    manual=__doc__,
)


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
