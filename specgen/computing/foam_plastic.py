"""Foam plastic in exterior walls: the boards that are foam, and the types of construction that restrict it."""

from specgen.model.typed_views import WaterDetail
from specgen.quantities.quantity import Quantity

FOAM = ("eps", "xps", "polyiso", "phenolic")
# Construction types I to IV, the exterior walls of which section 2603.5 is about.
RESTRICTED = ("IA", "IB", "IIA", "IIB", "IIIA", "IIIB", "IV", "IVA", "IVB", "IVC", "IVHT")


def foam_at_ledge(detail: WaterDetail) -> Quantity | None:
    """The thickness of wall board and ledge at a ledge shaped of board; None for one under metal, which is framed.

    Raises Absent.
    """
    if detail.kind != "ledge" or detail.cap:
        return None
    board: Quantity = detail.elevation.wall.insulation.thickness
    return board + detail.depth
