"""No coat is sprayed on a wall that stands in the sun, and each face has hours in which it can be sprayed.

Why: in direct sun the first pass skins over before the second wets it, and the gloss is dull and rough. A south face
that the sun reaches all day is not sprayed at all without cover.

passes
    log: [{step: gloss, sun_on_wall: no}]
fails WEA-04a at log.0.sun_on_wall
    log: [{step: gloss, sun_on_wall: yes}]
passes
    site: {latitude: 41.2 deg}
    elevations: {E1: {facing: N}}
    schedule: {shift_start: 06:00, shift_hours: 10, spray_start: 2027-06-07, spray_end: 2027-06-25}
    shade: {X1: {elevation: E1, kind: natural}}
fails WEA-04b at elevations.E1.facing
    site: {latitude: 41.2 deg}
    elevations: {E1: {facing: S}}
    schedule: {shift_start: 09:00, shift_hours: 6, spray_start: 2027-06-07, spray_end: 2027-06-25}
    shade: {X1: {elevation: E1, kind: natural}}
"""

from functools import partial

from specgen.computing.time.usable_hours import SUNNY, list_usable_months
from specgen.judging.rule import STOP, Rule, Violations, violation
from specgen.model.absence import any_of
from specgen.model.typed_views import Description, Elevation, Shading

RULE = Rule(
    "WEA-04",
    "No spraying in direct sun",
    remedy="Hang shade cloth or set a tent, or move the shift into the hours of the elevation's own shade.",
    steps="protection primer gloss",
    documents="D05 D08 D14",
)

RULE.clause(
    "a",
    STOP,
    "The wall is sprayed in direct sun.",
    when="log.step in sprayed and log.sun_on_wall = yes",
    basis="practice",
    remedy=(
        "Stop until the wall is in shade. View what was sprayed against the mockup, and recoat dull or rough panels "
        "to a natural break."
    ),
)


@RULE.test(
    "b",
    STOP,
    "In {found:and}, the face has no hours of its own shade in the shift in which it could be sprayed.",
    at="elevation.facing",
    basis="practice",
)
def no_shade_hours(elevation: Elevation, project: Description) -> Violations:
    """Nothing but the face shades it, and in a month of spraying the sun takes all hours of the shift."""
    if any_of(project.shade.find_referring("elevation", elevation.mark), partial(_is_cover, elevation)):
        return
    months = [
        f"{month.month:%B}" for month in list_usable_months(elevation) if month.hours <= 0 and SUNNY in dict(month.lost)
    ]
    if months:
        yield violation(tuple(dict.fromkeys(months)))


def _is_cover(elevation: Elevation, shade: Shading) -> bool:
    return shade.kind in ("shade_cloth", "tent") and shade.elevation == elevation
