"""The air demand of the guns of a project, and how flows of air are told."""

from fractions import Fraction

from specgen.model.typed_views import Description, SprayGun
from specgen.model.value_text import value_text
from specgen.quantities.quantity import Quantity, round_quantity


def sum_air_flow(project: Description) -> Quantity:
    """The total air flow of all guns, each for its share of the time, without leaks or reserve."""
    total = Quantity.of(0, "scfm")
    for gun in project.guns:
        total = total + draw_of_gun(gun) * gun.count
    return total


def draw_of_gun(gun: SprayGun) -> Quantity:
    """The air flow of one gun for its share of the time."""
    return gun.air_flow * Fraction(gun.duty)


def tell_flow(project: Description, flow: Quantity) -> str:
    """A flow of standard air as the calculations print it; a compressor is rated in air of another state."""
    unit = "scfm" if project.package.units == "ip" else "L/s"
    standard = round_quantity(Quantity.of(flow.to(unit), unit), 3)
    return value_text(standard, None, project.package.units, project.package.both_units)
