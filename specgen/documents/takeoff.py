"""The take-off of areas: gross, openings, net, joint sides and mockup, exact until they print."""

from fractions import Fraction
from math import floor
from typing import NamedTuple, cast

from specgen.computing.face_area import gross_area, openings_area
from specgen.computing.joint_sides import find_added_width
from specgen.documents.context import OF_A_SUM, DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.layouts import list_layouts
from specgen.documents.marks import list_marks
from specgen.model.absence import Absent
from specgen.model.typed_views import Description, Elevation
from specgen.quantities.quantity import Quantity
from specgen.resolving.find_limit import find_limit


class FaceArea(NamedTuple):
    """An elevation as it is taken off, in square meters; `joints` in meters, None where its layout is not known."""

    mark: str
    gross: Fraction
    openings: Fraction
    joints: Fraction | None
    sides: Fraction  # of the joints
    returns: Fraction  # at the openings

    @property
    def net(self) -> Fraction:
        """The elevation less its openings."""
        return self.gross - self.openings

    @property
    def coated(self) -> Fraction:
        """The net area with the sides of the joints and the returns: what coats are ordered for."""
        return self.net + self.sides + self.returns


def list_faces(context: DocumentContext) -> dict[str, FaceArea | Absent]:
    """Each elevation by its mark: its areas, or the field they wait for.

    Sides of joints are measured where every elevation is laid out, else an allowance, as in the coats that are ordered.
    """
    marks = list_marks(context, "elevations")
    measured = all(mark in list_layouts(context) for mark in marks)
    return {mark: _measure(context, mark, _find_added(context) if measured else None) for mark in marks}


def number_batches(context: DocumentContext) -> dict[str, str]:
    """The mark of the boxed batch of each elevation: BT1 for the first, which no panel bears."""
    return {mark: f"BT{number}" for number, mark in enumerate(list_marks(context, "elevations"), 1)}


def _measure(context: DocumentContext, mark: str, added: Quantity | None) -> FaceArea | Absent:
    elevation = cast(Elevation, context.project.view(("elevations", mark)))
    layouts = list_layouts(context).get(mark)
    try:
        gross = gross_area(elevation)
        openings = openings_area(elevation)
    except Absent as absent:
        return absent
    joints = layouts[0].score.joint_length if layouts else None
    net = gross - openings
    sides = net * _share(context, "coat.joint_sides") if joints is None or added is None else joints * added.amount
    return FaceArea(mark, gross, openings, joints, sides, net * _share(context, "coat.returns"))


def _share(context: DocumentContext, limit: str) -> Fraction:
    """An allowance in parts of the net area."""
    return Fraction(find_limit(limit, context.project).value) / 100


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


def tell_summed(context: DocumentContext, square_meters: Fraction) -> DisplayValue:
    """An area that is a sum, to a whole square foot or a tenth of a square meter, with its source."""
    unit, decimals = ("ft2", 0) if context.first == "ip" else ("m2", 1)
    # The sides of a joint are taken from a root: half a square foot is not to turn on its last digit.
    exact = round(Quantity(square_meters, "area", "m2").to(unit), 6)
    rounded = Quantity.of(_round_half_up(exact, decimals), unit)
    return DisplayValue(context.text(rounded, None), rounded, OF_A_SUM)


def _round_half_up(number: Fraction, decimals: int) -> Fraction:
    """Half a unit counts as a whole one, as the trade rounds what is ordered."""
    scale = 10**decimals
    return Fraction(floor(number * scale + Fraction(1, 2)), scale)


def tell_volume(context: DocumentContext, volume: Quantity) -> DisplayValue:
    """A volume to a hundredth of a gallon or a tenth of a liter, so that a whole pail is told from a little more."""
    unit, decimals = ("gal", 2) if context.first == "ip" else ("L", 1)
    rounded = Quantity.of(_round_half_up(volume.to(unit), decimals), unit)
    return DisplayValue(context.text(rounded, None), rounded, OF_A_SUM)
