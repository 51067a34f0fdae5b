"""The take-off of areas by elevation, as numbers that can be summed."""

from fractions import Fraction

from specgen.documents.context import DocumentContext
from specgen.documents.marks import name_member
from specgen.documents.takeoff import FaceArea, list_faces, number_batches
from specgen.model.absence import Absent
from specgen.model.sheet import Sheet, SheetCell, SheetColumn
from specgen.quantities.units import UNITS

DOCUMENT, ORDER = "D13", 60
_AREAS = ("Gross", "Openings", "Net", "Joint sides", "Returns", "Coated")
_DECIMALS = 2  # of a square foot or a square meter


def make_sheet(context: DocumentContext) -> Sheet:
    """One row for each elevation; its areas are left empty while they wait for a value."""
    length, area = ("ft", "ft2") if context.first == "ip" else ("m", "m2")
    told = "sq ft" if context.first == "ip" else "sq m"
    columns = (
        SheetColumn("Elevation", 26),
        SheetColumn("Batch", 8),
        *(SheetColumn(f"{title}, {told}", 14, "number", _DECIMALS) for title in _AREAS),
        SheetColumn(f"Aesthetic joints, {length}", 18, "number", _DECIMALS),
    )
    batches = number_batches(context)
    rows = tuple(
        (name_member(context, "elevations", mark), batches[mark], *_measure(face, area, length))
        for mark, face in list_faces(context).items()
    )
    return Sheet("Areas", columns, rows, "No elevations")


def _measure(face: FaceArea | Absent, area: str, length: str) -> tuple[SheetCell, ...]:
    if isinstance(face, Absent):
        return (None,) * (len(_AREAS) + 1)
    areas = (face.gross, face.openings, face.net, face.sides, face.returns, face.coated)
    joints = None if face.joints is None else _count(face.joints, length)
    return (*(_count(amount, area) for amount in areas), joints)


def _count(amount: Fraction, unit: str) -> float:
    """An amount in meters or square meters as a number in a unit."""
    return float(round(amount / UNITS[unit].factor, _DECIMALS))
