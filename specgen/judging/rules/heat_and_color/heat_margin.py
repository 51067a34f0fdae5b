"""No second sun, thin air or dark shade brings the board near the heat at which it softens.

Why: the usual heat figures know one sun at low altitude and a color that is not too dark. Glass across the
street, a site high up, or a shade at the edge takes up the margin they leave.

passes
    climate: {hot_air: 95 F, peak_wall_irradiance: 800 W/m2}
    site: {latitude: 40 deg, altitude: 500 ft}
    walls: {W1: {insulation: {kind: eps}}}
    elevations: {E1: {color: C1, facing: W, reflecting_surface_near: no}}
    colors: {C1: {lrv: 54, solar_reflectance: 0.60, emittance: 0.85}}
fails HEA-03a at elevations.E1.color
    climate: {hot_air: 95 F, peak_wall_irradiance: 800 W/m2}
    site: {latitude: 40 deg, altitude: 500 ft}
    walls: {W1: {insulation: {kind: eps}}}
    elevations: {E1: {color: C1, facing: W, reflecting_surface_near: no}}
    colors: {C1: {solar_reflectance: 0.50, emittance: 0.85}}
fails HEA-03b at elevations.E1.color
    climate: {hot_air: 95 F, peak_wall_irradiance: 800 W/m2}
    site: {latitude: 40 deg, altitude: 500 ft}
    walls: {W1: {insulation: {kind: eps}}}
    elevations: {E1: {color: C1, facing: W, reflecting_surface_near: no}}
    colors: {C1: {solar_reflectance: 0.50, emittance: 0.30}}
fails HEA-03c at elevations.E1.reflecting_surface_near
    elevations: {E1: {reflecting_surface_near: yes}}
fails HEA-03d at climate.peak_wall_irradiance
    climate: {peak_wall_irradiance: 750 W/m2}
    site: {latitude: 39.7 deg, altitude: 5200 ft}
fails HEA-03e at colors.C1.lrv
    colors: {C1: {lrv: 22}}
"""

from specgen.judging.rule import CAUTION, Computed, Rule, Violations, violation
from specgen.model.absence import if_given, read_all
from specgen.model.typed_views import Description, Elevation
from specgen.model.working import Working
from specgen.quantities.comparison import more
from specgen.quantities.quantity import Quantity, round_quantity, subtract_temperatures

ACCEPTED = "submit the EIFS manufacturer's written acceptance of this color on this face."

RULE = Rule(
    "HEA-03",
    "Heat margin of the board",
    remedy=f"Use a lighter color, or {ACCEPTED}",
    steps="gloss",
    documents="D05 D06",
)


@RULE.test(
    "a",
    CAUTION,
    "In still air the margin of the face below the service limit of the board is {found}; minimum {wanted}.",
    at="elevation.color",
    basis="computed",
    limit="board.heat_margin",
)
def thin_margin(elevation: Elevation, face_heat_still: Computed, limit: Quantity) -> Violations:
    """The hottest face, that of still air, comes near the heat at which the board softens."""
    heat, softens = read_all(face_heat_still, lambda: elevation.wall.insulation.service_limit)
    margin = subtract_temperatures(softens, heat.rounded)
    # A face that reaches the limit is told by the next clause.
    if heat.rounded < softens and margin < limit:
        yield violation(round_quantity(margin), wanted=limit, remedy=_tell_lighter(heat))


@RULE.test(
    "b",
    CAUTION,
    "In still air the face reaches {found}; service limit of the board {wanted}.",
    at="elevation.color",
    basis="computed",
)
def softens_in_still_air(elevation: Elevation, face_heat_still: Computed, face_heat: Computed) -> Violations:
    """With no wind to cool it the face is no cooler than the heat at which the board softens.

    A face that the rule on face heat stops is told there alone: no letter accepts it.
    """
    still, limit = read_all(face_heat_still, lambda: elevation.wall.insulation.service_limit)
    if still.rounded >= limit and not _is_stopped(face_heat, limit):
        yield violation(_to_tenth(still.quantity), wanted=limit, remedy=_tell_lighter(still))


RULE.clause(
    "c",
    CAUTION,
    "Glass or metal near this face reflects a second sun onto it.",
    when="elevation.reflecting_surface_near = yes",
    basis="trade_eps_heat",
    remedy="Have the reflection onto this face checked, and use a lighter color or submit the EIFS "
    "manufacturer's written acceptance of this color on this face.",
)


@RULE.test(
    "d",
    CAUTION,
    "Peak sun on the sunniest wall is given as {found}; a clear sky at the altitude of this site gives {wanted}.",
    at="climate.peak_wall_irradiance",
    basis="trade_eps_heat computed",
    limit="altitude.strong_sun",
    remedy="Enter the peak irradiance of this altitude, {wanted}.",
)
def sun_of_low_ground(project: Description, peak_sun: Computed, limit: Quantity) -> Violations:
    """High up, the project's own figure for the sun is below that of a clear sky there."""
    given = project.climate.get("peak_wall_irradiance")
    if given is not None and more(project.site.altitude, limit) and given < peak_sun().rounded:
        yield violation(given, wanted=peak_sun().rounded)


RULE.clause(
    "e",
    CAUTION,
    "Light reflectance is {found} %, near the usual minimum of {color.lrv_least} over EPS.",
    when="color.lrv >= limit(color.lrv_least) and color.lrv < limit",
    limit="color.lrv_cautious",
)


def _is_stopped(face_heat: Computed, softens: Quantity) -> bool:
    """Whether the face is known to soften the board without still air."""
    heat = if_given(face_heat)
    return heat is not None and heat.rounded >= softens


def _to_tenth(temperature: Quantity) -> Quantity:
    """A temperature as documents print it."""
    return Quantity.of(f"{temperature.number(temperature.unit):.1f}", temperature.unit)


def _tell_lighter(face: Working) -> str:
    """What a lighter color must throw back to keep the margin, where any does."""
    least = next((step.value for step in face.steps if step.symbol == "SR_w"), None)
    if least is None:
        return ""
    return (
        f"With the architect's approval, use a color with a minimum solar reflectance of {least:.2f} at the same "
        f"emittance on every face and mockup of this color, or {ACCEPTED}"
    )
