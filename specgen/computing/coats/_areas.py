"""Areas of the elevations of a project: width by height, less openings."""

from fractions import Fraction

from specgen.computing.face_area import gross_area
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.typed_views import Description
from specgen.model.working import InputRow
from specgen.quantities.quantity import Quantity
from specgen.resolving.find_limit import find_limit

# A half in steps, which no coat covers in full, stands for the corner return and the panel that is coated again.
MOCKUP = "width by height, for its face, return, and recoated panel"
# The row of the limits on what is coated beside the face.
RETURNS = "coat.returns"
READS = ("elevations.*.width", "elevations.*.height", "elevations.*.openings")


def measure_areas(project: Description) -> tuple[Quantity, Quantity]:
    """The area of all elevations and that of their openings; raises Absent for a size that is not given."""
    gross = openings = Fraction(0)
    for elevation in project.elevations:
        gross += gross_area(elevation)
        openings += sum(opening.width.amount * opening.height.amount for opening in elevation.openings)
    return Quantity(gross, "area", "m2"), Quantity(openings, "area", "m2")


def measure_mockup(project: Description) -> Quantity | None:
    """The area of a mockup that stands by itself and is coated besides; none without its size."""
    width, height = project.mockup.get("width"), project.mockup.get("height")
    if project.mockup.get("kind") != "free_standing" or width is None or height is None:
        return None
    return Quantity(width.amount * height.amount, "area", "m2")


def area_rows(project: Description, area: str) -> tuple[InputRow, ...]:
    """The lines of what is coated, in `area`; raises Absent for a size that is not given."""
    gross, openings = measure_areas(project)
    mockup = measure_mockup(project)
    returns = find_limit(RETURNS, project.project)
    return (
        InputRow("A_w", "gross elevation area", gross.number(area), area, "all elevations"),
        InputRow("A_o", "openings", openings.number(area), area, "all elevations"),
        InputRow("a", "returns and joint sides", float(returns.value), "%", source=returns.source, limit=RETURNS),
        *((InputRow("A_m", "mockup", mockup.number(area), area, MOCKUP),) if mockup is not None else ()),
    )


def add_net_area(working: WorkingBuilder, area: str) -> None:
    """Adds A, what is coated: the net area with the allowance for returns and joint sides, and the mockup."""
    mockup = " + A_m" if "A_m" in working.known else ""
    name = "coated area, with returns" + (" and mockup" if mockup else "")
    working.step("A", name, f"(A_w - A_o) * (1 + a / 100){mockup}", area)
