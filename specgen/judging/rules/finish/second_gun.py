"""A second gun of the same nozzles stands ready beside one that sprays flake.

Why: flake blocks nozzles. A panel cannot be finished half an hour later without a line that shows, so
another gun takes over while the edge is wet.

passes
    colors: {C1: {metallic: yes}}
    guns: {G1: {count: 1, spares: 1, fluid_nozzle: 0.070 in, air_nozzle: cap 3}}
fails FIN-16a at guns.G1.fluid_nozzle
    colors: {C1: {metallic: yes}}
    guns: {G1: {count: 1, fluid_nozzle: 0.070 in, air_nozzle: cap 3}}
"""

from collections.abc import Iterator
from functools import partial

from specgen.judging.rule import CAUTION, Rule, Violations, violation
from specgen.model.absence import all_known, any_of, if_given
from specgen.model.project import asked_once
from specgen.model.typed_views import Color, Description, SprayGun
from specgen.quantities.comparison import equal

RULE = Rule(
    "FIN-16",
    "Spare gun",
    remedy="Set up and test a second gun with the same nozzles.",
    steps="equipment setup gloss",
    documents="D08 D12a",
)


@RULE.test(
    "a",
    CAUTION,
    "No second gun with a fluid nozzle of {found} is ready; a blocked gun stops a panel half done.",
    at="spray_gun.fluid_nozzle",
    basis="practice",
)
def no_second_gun(gun: SprayGun, project: Description) -> Violations:
    """Flake is sprayed, and no other gun has the nozzles of this one."""
    if all_known(
        lambda: _is_metallic(project),
        lambda: gun.count + gun.spares < 2,
        lambda: not any_of(_others(gun, project), partial(_alike, gun)),
    ):
        yield violation(gun.fluid_nozzle)


@asked_once
def _is_metallic(project: Description) -> bool:
    """Whether any color has flake."""
    return any_of(project.colors, _metallic)


def _others(gun: SprayGun, project: Description) -> Iterator[SprayGun]:
    """The other guns that can have the same nozzles: all of them while its own air nozzle is not known."""
    air = if_given(lambda: gun.air_nozzle)
    guns = project.guns if air is None else project.guns.find_referring("air_nozzle", air)
    return (other for other in guns if other.mark != gun.mark)


def _metallic(color: Color) -> bool:
    return bool(color.metallic)


def _alike(gun: SprayGun, other: SprayGun) -> bool:
    """Whether two guns have the same nozzles."""
    return all_known(lambda: equal(gun.fluid_nozzle, other.fluid_nozzle), lambda: gun.air_nozzle == other.air_nozzle)
