"""Areas of the elevations of a project: width by height, less openings."""

from fractions import Fraction
from functools import partial

from specgen.computing.face_area import gross_area, openings_area
from specgen.computing.joint_sides import sum_sides
from specgen.computing.working_builder import WorkingBuilder
from specgen.model.absence import read_all
from specgen.model.series import join_series
from specgen.model.typed_views import Description, Elevation
from specgen.model.working import InputRow
from specgen.quantities.quantity import Quantity
from specgen.resolving.find_limit import find_limit
from specgen.resolving.provider import Ask

MOCKUP = "width by height"
# A half in steps, which no coat covers in full, stands for the corner return and the panel that is coated again.
STEPPED = "width by height; uncoated steps make up for corner return and recoated panel"
# The rows of the limits on what is coated beside the face.
RETURNS, SIDES = "coat.returns", "coat.joint_sides"
_MEASURED = "length of the joints times what their sides add to their width"
# What is coated besides the elevations less their openings.
_MORE = {"A_m": "mockup", "A_j": "joint sides"}
READS = ("elevations.*.width", "elevations.*.height", "elevations.*.openings")


def measure_areas(project: Description) -> tuple[Quantity, Quantity]:
    """The area of all elevations and that of their openings; raises Absent for all sizes that are not given."""
    every = read_all(*(partial(_measure, elevation) for elevation in project.elevations))
    gross, openings = (sum((each[place] for each in every), start=Fraction(0)) for place in (0, 1))
    return Quantity(gross, "area", "m2"), Quantity(openings, "area", "m2")


def _measure(elevation: Elevation) -> tuple[Fraction, Fraction]:
    """The square meters of an elevation and of its openings."""
    return read_all(lambda: gross_area(elevation), lambda: openings_area(elevation))


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
    rows = [
        InputRow("A_w", "gross elevation area", gross.number(area), area, "all elevations"),
        InputRow("A_o", "openings", openings.number(area), area, "all elevations"),
        _allow("a", "returns at openings", RETURNS, project),
    ]
    if mockup is not None:
        told = STEPPED if "build_up_steps" in (project.mockup.get("includes") or ()) else MOCKUP
        rows.append(InputRow("A_m", "mockup", mockup.number(area), area, told))
    if sides is not None:
        rows.append(InputRow("A_j", "sides of aesthetic joints", sides.number(area), area, _MEASURED))
    else:
        rows.append(_allow("s", "sides of aesthetic joints", SIDES, project))
    return tuple(rows)


def _allow(symbol: str, name: str, limit: str, project: Description) -> InputRow:
    """The line of a share of the net area."""
    share = find_limit(limit, project.project)
    return InputRow(symbol, name, float(share.value), "%", source=share.source, limit=limit)


def tell_allowance(rows: tuple[InputRow, ...]) -> str:
    """What of the area is a share and not measured."""
    sides = any(row.symbol == "A_j" for row in rows)
    return f"Includes an allowance for returns at openings{'' if sides else ' and sides of aesthetic joints'}."


def add_net_area(working: WorkingBuilder, area: str) -> None:
    """Adds A, what is coated: the net area with the allowances, the mockup and the measured sides of joints."""
    more = [symbol for symbol in _MORE if symbol in working.known]
    share = "(a + s)" if "s" in working.known else "a"
    names = ["returns", *(_MORE[symbol] for symbol in more)]
    net = f"(A_w - A_o) * (1 + {share} / 100)"
    working.step("A", f"coated area, with {join_series(names)}", " + ".join((net, *more)), area)
