"""Areas of the elevations of a project: width by height, less openings."""

from fractions import Fraction

from specgen.computing.face_area import gross_area
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.typed_views import Description
from specgen.model.working import InputRow
from specgen.quantities.quantity import Quantity

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
    return (
        InputRow("A_w", "gross elevation area", gross.number(area), area, "all elevations"),
        InputRow("A_o", "openings", openings.number(area), area, "all elevations"),
        *((InputRow("A_m", "mockup", mockup.number(area), area, "width by height"),) if mockup is not None else ()),
    )


def add_net_area(working: WorkingBuilder, area: str) -> None:
    """Adds A, what is coated."""
    mockup = " + A_m" if "A_m" in working.known else ""
    working.step("A", "net area" + (", with mockup" if mockup else ""), f"A_w - A_o{mockup}", area)
