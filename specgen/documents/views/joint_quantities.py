"""What joints take, by kind and size: sealant, backer rod, tape, masking, cutting, and detail mesh."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import Any, cast

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.joint_borders import find_only_sealant, list_sealed_penetrations
from specgen.documents.joint_flashing import is_flashed, measure_flashed_heads
from specgen.documents.layouts import tell_length
from specgen.documents.marks import list_marks, name_member
from specgen.documents.members import span_first
from specgen.documents.takeoff import FaceArea, list_faces, tell_volume
from specgen.documents.views._areas import name_missing
from specgen.model.absence import Absent
from specgen.model.value_text import words
from specgen.quantities.quantity import Quantity

_BETWEEN_EIFS = {"building_expansion", "height_change", "panel_joint", "floor_line", "eifs_to_eifs"}
Entry = tuple[Any, Any, Any, Any]
_MEASURED = "measure at the penetration"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each kind and size."""
    lines = (*_cutting(context), *_sealants(context), *_rods(context), *_masking(context))
    return TableView(("Item", "Type and size", "Quantity", "Where"), lines, (20, 34, 20, 26))


def _cutting(context: DocumentContext) -> Iterator[Entry]:
    """Cutting of aesthetic joints, and the mesh that goes with joints and openings."""
    faces = [face for face in list_faces(context).values() if isinstance(face, FaceArea)]
    length = sum((face.joints or Fraction(0) for face in faces), Fraction(0))
    lines = span_first([face.mark for face in faces if face.joints])
    if length:
        size = [context.display(("aesthetic_joint", name)) for name in ("profile", "width", "depth")]
        yield "Joint cutting", [size[0], ", ", size[1], " x ", size[2]], tell_length(context, length), lines
    walls = [("walls", mark, "mesh") for mark in list_marks(context, "walls")]
    if length and any(context.project.get((*wall, "detail_at_aesthetic_joints")) for wall in walls):
        yield "Detail mesh", "along aesthetic joints", tell_length(context, length), lines
    counted = {mark: _count_corners(context, mark) for mark in list_marks(context, "elevations")}
    corners = sum(counted.values())
    if corners and any(context.project.get((*wall, "diagonals")) for wall in walls):
        yield (
            "Detail mesh",
            "diagonals at the corners of openings",
            f"{corners} pieces",
            span_first([mark for mark in counted if counted[mark]]),
        )


def _count_corners(context: DocumentContext, elevation: str) -> int:
    """The corners of openings that lie within an elevation: a door on its lower edge has two."""
    project, face = context.project, ("elevations", elevation)
    wide, high = (project.get((*face, side)) for side in ("width", "height"))
    corners = 0
    for mark in project.members.get((*face, "openings"), ()):
        x, y, width, height = (project.get((*face, "openings", mark, name)) for name in ("x", "y", "width", "height"))
        across = 2 if None in (x, width, wide) else (x.amount > 0) + (x.amount + width.amount < wide.amount)
        up = 2 if None in (y, height, high) else (y.amount > 0) + (y.amount + height.amount < high.amount)
        corners += across * up
    return corners


def _sealants(context: DocumentContext) -> Iterator[Entry]:
    """The sealant of each bead size, waste included, and its sum for each sealant."""
    for sealant, joints in _group(context, lambda at: _mark(context, (*at, "sealant"))).items():
        item = (
            _name_sealant(context, sealant) if sealant else ["Sealant ", context.ask(("joints", joints[0], "sealant"))]
        )
        total: Quantity | None = None
        sizes = _group(context, lambda at: _tell_bead(context, at), joints)
        for size, marks in sizes.items():
            volume = _sum_volumes(context, marks)
            said = _tell_sealant(context, volume) if isinstance(volume, Quantity) else name_missing(context, volume)
            yield item, [*size], said, span_first(marks)
            if isinstance(volume, Quantity):
                total = volume if total is None else total + volume
        if total is not None and len(sizes) > 1:
            yield item, "all sizes", _tell_sealant(context, total), span_first(joints)


def _tell_sealant(context: DocumentContext, volume: Quantity) -> Any:
    """`1.64 gal (210 fl oz)`: sausages and cartridges are sold by the fluid ounce, elsewhere by parts of a liter."""
    told = tell_volume(context, volume)
    ounces, beside = f"{ceil(volume.to('fl oz'))} fl oz", told.text.removesuffix(")")
    said = f"{beside}; {ounces})" if beside != told.text else f"{beside} ({ounces})"
    return replace(told, text=said) if context.first == "ip" else told


def _name_sealant(context: DocumentContext, mark: str) -> str:
    """`Sealant S1, Tidewell 3`; `S1, Sealant 61` where its own name says what it is."""
    name = name_member(context, "sealants", mark).removeprefix(mark).strip()
    lead = "" if "sealant" in name.lower() else "Sealant "
    return f"{lead}{mark}{', ' if name else ''}{name}"


def _rods(context: DocumentContext) -> Iterator[Entry]:
    """Backer rod by diameter, and bond-breaker tape by width."""

    def rod(at: tuple[str, ...]) -> tuple[Any, ...]:
        kind = context.project.get((*at, "rod_kind"))
        if kind == "none":
            taped = context.project.get((*at, "bond_break_tape"))
            return ("Bond-breaker tape", context.display((*at, "width"))) if taped else ()
        told = words(kind) if kind else context.display((*at, "rod_kind"))
        return ("Backer rod", told, ", ", context.display((*at, "rod_diameter")))

    for parts, marks in _group(context, rod).items():
        if parts:
            yield parts[0], [*parts[1:]], _sum_lengths(context, marks), span_first(marks)
    for mark in list_marks(context, "details"):
        path = ("details", mark, "rod_diameter")
        if context.project.get(path) is not None:
            yield "Backer rod", context.display(path), _MEASURED, mark


def _masking(context: DocumentContext) -> Iterator[Entry]:
    """Masking of the bond faces that the gloss stays off: of one side beside other work or a flashing, else of both.

    At a head with a flashing no bond face is coated.
    """

    def sides(at: tuple[str, ...]) -> int:
        if context.project.get((*at, "bond_face")) in (None, "gloss"):
            return 0
        kind = context.project.get((*at, "kind"))
        return 1 if kind not in _BETWEEN_EIFS or is_flashed(context, at) else 2

    for count, marks in _group(context, sides).items():
        if count:
            said = "one bond face" if count == 1 else "two bond faces"
            heads = {mark: measure_flashed_heads(context, ("joints", mark)) for mark in marks}
            said += "; none at flashed heads" if any(heads.values()) else ""
            yield "Masking", said, _sum_lengths(context, marks, count, heads), span_first(marks)
    only = find_only_sealant(context)
    through = list_sealed_penetrations(context) if only else []
    if through and context.project.get(("sealants", only, "reported_face")) not in (None, "gloss"):
        yield "Masking", "bond face around the collar", _MEASURED, span_first(through)


def _group(context: DocumentContext, tell: Any, joints: Any = None) -> dict[Any, list[str]]:
    """The joints of which the same is told."""
    found: dict[Any, list[str]] = {}
    for mark in joints if joints is not None else list_marks(context, "joints"):
        found.setdefault(tell(("joints", mark)), []).append(mark)
    return found


def _tell_bead(context: DocumentContext, at: tuple[str, ...]) -> tuple[Any, ...]:
    return (context.display((*at, "width")), " x ", context.display((*at, "depth")))


def _mark(context: DocumentContext, path: tuple[str, ...]) -> str:
    member = context.project.get(path)
    return "" if member is None else str(member.mark)


def _sum_volumes(context: DocumentContext, marks: list[str]) -> Quantity | Absent:
    """The exact volumes of these joints together, or the field that one of them waits for."""
    total: Quantity | None = None
    for mark in marks:
        try:
            volume: Quantity = context.resolve(("joints", mark), "sealant-quantity").quantity
        except Absent as absent:
            return absent
        total = volume if total is None else total + volume
    assert total is not None
    return total


def _find_length(context: DocumentContext, mark: str) -> Quantity:
    """The length of a joint as given, else as its elevation has it. Raises Absent."""
    given: Quantity | None = context.project.get(("joints", mark, "length"))
    return given if given is not None else cast(Quantity, context.resolve(("joints", mark), "joint-run"))


def _sum_lengths(
    context: DocumentContext, marks: list[str], sides: int = 1, less: Mapping[str, Fraction] | None = None
) -> DisplayValue:
    """The lengths of these joints together, each `less` a part of it, or the first that is not given."""
    total = Fraction(0)
    for mark in marks:
        try:
            total += sides * max(_find_length(context, mark).amount - (less or {}).get(mark, 0), Fraction(0))
        except Absent as absent:
            return name_missing(context, absent)
    return tell_length(context, total)
