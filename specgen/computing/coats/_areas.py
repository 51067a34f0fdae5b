"""Areas of the elevations of a project: width by height, less openings."""

from fractions import Fraction

from specgen.model.typed_views import Description
from specgen.quantities.quantity import Quantity

READS = ("elevations.*.width", "elevations.*.height", "elevations.*.openings")


def measure_areas(project: Description) -> tuple[Quantity, Quantity]:
    """The area of all elevations and that of their openings; raises Absent for a size that is not given."""
    gross = openings = Fraction(0)
    for elevation in project.elevations:
        gross += elevation.width.amount * elevation.height.amount
        openings += sum(opening.width.amount * opening.height.amount for opening in elevation.openings)
    return Quantity(gross, "area", "m2"), Quantity(openings, "area", "m2")
