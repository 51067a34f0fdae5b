"""The air demand of the guns of a project."""

from fractions import Fraction

from specgen.model.typed_views import Description, SprayGun
from specgen.quantities.quantity import Quantity


def sum_air_flow(project: Description) -> Quantity:
    """The total air flow of all guns, each for its share of the time, without leaks or reserve."""
    total = Quantity.of(0, "scfm")
    for gun in project.guns:
        total = total + draw_of_gun(gun) * gun.count
    return total


def draw_of_gun(gun: SprayGun) -> Quantity:
    """The air flow of one gun for its share of the time."""
    return gun.air_flow * Fraction(gun.duty)
