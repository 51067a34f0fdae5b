"""The take-off of areas: gross, openings, net, joint sides and mockup, exact until they print."""

from fractions import Fraction
from typing import NamedTuple, cast

from specgen.computing.face_area import gross_area
from specgen.computing.joint_sides import find_added_width
from specgen.documents.context import OF_A_SUM, DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.layouts import list_layouts
from specgen.documents.marks import list_marks
from specgen.model.absence import Absent
from specgen.model.typed_views import Description, Elevation
from specgen.quantities.quantity import Quantity, round_quantity


class FaceArea(NamedTuple):
    """An elevation as it is taken off, in square meters; `joints` in meters; None where its layout is not known."""

    mark: str
    gross: Fraction
    openings: Fraction
    joints: Fraction | None
    sides: Fraction | None

    @property
    def net(self) -> Fraction:
        """The elevation less its openings."""
        return self.gross - self.openings

    @property
    def coated(self) -> Fraction:
        """The net area with the sides of the joints."""
        return self.net + (self.sides or 0)


def list_faces(context: DocumentContext) -> dict[str, FaceArea | Absent]:
    """Each elevation by its mark: its areas, or the field they wait for."""
    return {mark: _measure(context, mark) for mark in list_marks(context, "elevations")}


def _measure(context: DocumentContext, mark: str) -> FaceArea | Absent:
    elevation = cast(Elevation, context.project.view(("elevations", mark)))
    layouts = list_layouts(context).get(mark)
    try:
        gross = gross_area(elevation)
        openings = sum((o.width.amount * o.height.amount for o in elevation.openings), Fraction(0))
    except Absent as absent:
        return absent
    joints = layouts[0].score.joint_length if layouts else None
    added = _find_added(context)
    sides = joints * added.amount if joints is not None and added is not None else None
    return FaceArea(mark, gross, openings, joints, sides)


def _find_added(context: DocumentContext) -> Quantity | None:
    """What the sides of a joint add to its width; None where it is not known."""
    try:
        return find_added_width(cast(Description, context.project.root()))
    except Absent:
        return None


def find_mockup_area(context: DocumentContext) -> Fraction | None:
    """The area of a mockup that stands by itself, in square meters; None for any other."""
    kind, width, height = (context.project.get(("mockup", name)) for name in ("kind", "width", "height"))
    return width.amount * height.amount if kind == "free_standing" and width and height else None


def tell_area(context: DocumentContext, square_meters: Fraction) -> DisplayValue:
    """An area to three digits, or to the whole square foot where it has more."""
    unit = "ft2" if context.first == "ip" else "m2"
    area = round_quantity(Quantity.of(Quantity(square_meters, "area", "m2").to(unit), unit), 4)
    return DisplayValue(context.text(area, None), area, OF_A_SUM)


def tell_volume(context: DocumentContext, volume: Quantity) -> DisplayValue:
    """A volume to three digits."""
    rounded = round_quantity(volume, 3)
    return DisplayValue(context.text(rounded, None), rounded, OF_A_SUM)
