"""Areas of the elevations of a project: width by height, less openings."""

from fractions import Fraction

from specgen.computing.face_area import gross_area
from specgen.computing.joint_sides import sum_sides
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.typed_views import Description
from specgen.model.working import InputRow
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask

_SIDES = "length of the joints by what their sides add to their width"
# What is coated besides the elevations less their openings.
_MORE = {"A_m": "mockup", "A_j": "joint sides"}
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


def area_rows(project: Description, area: str, ask: Ask) -> tuple[InputRow, ...]:
    """The lines of what is coated, in `area`; raises Absent for a size that is not given."""
    gross, openings = measure_areas(project)
    mockup, sides = measure_mockup(project), sum_sides(project, ask)
    return (
        InputRow("A_w", "gross elevation area", gross.number(area), area, "all elevations"),
        InputRow("A_o", "openings", openings.number(area), area, "all elevations"),
        *((InputRow("A_m", "mockup", mockup.number(area), area, "width by height"),) if mockup is not None else ()),
        *(
            (InputRow("A_j", "sides of aesthetic joints", sides.number(area), area, _SIDES),)
            if sides is not None
            else ()
        ),
    )


def tell_left_out(rows: tuple[InputRow, ...]) -> str:
    """What the area does not count."""
    return "Excludes returns at openings" + (
        "." if any(row.symbol == "A_j" for row in rows) else " and sides of aesthetic joints."
    )


def add_net_area(working: WorkingBuilder, area: str) -> None:
    """Adds A, what is coated."""
    more = [symbol for symbol in _MORE if symbol in working.known]
    told = f", with {' and '.join(_MORE[symbol] for symbol in more)}" if more else ""
    working.step("A", f"net area{told}", " + ".join(("A_w - A_o", *more)), area)
