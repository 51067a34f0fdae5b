"""The sides of aesthetic joints, which are coated beyond the flat area of a wall."""

from math import sqrt

from specgen.model.absence import Absent
from specgen.model.layout import ElevationLayout
from specgen.model.typed_views import Description, Elevation
from specgen.quantities.quantity import Quantity
from specgen.resolving.provider import Ask


def widen(profile: str, width: float, depth: float) -> float:
    """What the sides of a joint add to its width, in the unit of both; a rounded one by Ramanujan's half ellipse."""
    if profile == "v":
        return 2 * sqrt((width / 2) ** 2 + depth**2) - width
    if profile == "square":
        return 2 * depth
    if profile == "trapezoid":  # its floor is half as wide as its mouth
        return 2 * sqrt((width / 4) ** 2 + depth**2) - width / 2
    half = width / 2
    ellipse = 3 * (half + depth) - sqrt((3 * half + depth) * (half + 3 * depth))
    return 3.141592653589793 * ellipse / 2 - width


def find_added_width(project: Description) -> Quantity:
    """What the sides of the project's aesthetic joint add to its width. Raises Absent."""
    joint = project.aesthetic_joint
    width, depth = joint.width.number("m"), joint.depth.number("m")
    return Quantity.of(widen(joint.profile, width, depth), "m")


def measure_sides(elevation: Elevation, added: Quantity, ask: Ask) -> Quantity:
    """The area that the sides of joints add to an elevation, by its layout. Raises Absent."""
    layout: ElevationLayout = ask("layout", elevation.path)
    return Quantity(layout.score.joint_length * added.amount, "area", "m2")


def sum_sides(project: Description, ask: Ask) -> Quantity | None:
    """That of all elevations; None where the joint or a layout is not known."""
    try:
        added = find_added_width(project)
        areas = [measure_sides(elevation, added, ask).amount for elevation in project.elevations]
    except Absent:
        return None
    return Quantity(sum(areas, added.amount * 0), "area", "m2")
