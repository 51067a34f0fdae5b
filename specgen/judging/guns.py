"""Air that the guns of a project draw together."""

from fractions import Fraction

from specgen.model.typed_views import Description
from specgen.quantities.quantity import Quantity


def drawn(project: Description) -> Quantity:
    """The flow of all guns with their triggers pulled for their share of the time, without leaks or reserve."""
    total = Quantity.of(0, "scfm")
    for gun in project.guns:
        total = total + gun.air_flow * (gun.count * Fraction(gun.duty))
    return total
