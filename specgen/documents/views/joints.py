"""The sealant schedule by joint: place, length, sealant, width by depth, backer rod, bond face and face tested."""

from collections.abc import Iterator, Sequence
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import OF_A_SUM, DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.figures.elevation_facts import find_open_sills
from specgen.documents.joint_flashing import name_flashing
from specgen.documents.marks import list_marks, name_linked
from specgen.documents.views._areas import name_missing
from specgen.model.absence import Absent
from specgen.model.problem import Refused
from specgen.model.value_text import words
from specgen.model.working import Working
from specgen.quantities.comparison import Outcome, Sense, compare
from specgen.quantities.quantity import Quantity

_OUTCOMES = {Outcome.WITHIN: "OK", Outcome.OUTSIDE: "not met"}
_FROM = {"vertical": " from the left end", "horizontal": " above the base"}
_SIDES = {"vertical": "height", "horizontal": "width"}
Path = tuple[str, ...]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each joint of the project, and for each sealed penetration of which a size is given."""
    lines = (*(_line(context, mark) for mark in list_marks(context, "joints")), *_of_penetrations(context))
    header = (
        "Joint",
        "Place",
        "Length",
        "Sealant",
        "Width x depth",
        "Minimum nominal width",
        "Backer rod",
        "Bond face",
    )
    return TableView(header, lines, (6, 35, 8, 8, 14, 11, 8, 10))


def _line(context: DocumentContext, mark: str) -> tuple[Any, ...]:
    at = ("joints", mark)

    def display(name: str) -> DisplayValue:
        return context.display((*at, name))

    return (
        mark,
        _place(context, at),
        _length(context, at),
        display("sealant"),
        [display("width"), " x ", display("depth"), *_tell_depths(context, at)],
        _needed(context, at),
        _rod(context, at),
        _bond_face(context, at),
    )


def _place(context: DocumentContext, at: Path) -> list[Any]:
    """`E1 South face: floor line at 12 ft`, `E1 South face: heads and jambs of A, B`."""
    where, kind = name_linked(context, (*at, "elevation"), "elevations"), context.display((*at, "kind"))
    parts: list[Any] = [where, ": ", kind]
    runs = context.project.get((*at, "runs"))
    if runs == "around_opening" and context.project.get((*at, "serves")):
        sides = ["heads and jambs of "] if _is_open_below(context, at) else [kind, " at "]
        parts = [where, ": ", *sides, context.display((*at, "serves"))]
    elif end := find_end(context, at):
        parts += [f" at the {end} end"]
    elif runs != "around_opening" and context.project.is_given((*at, "at")):
        parts += [" ", context.display((*at, "at")), _FROM.get(str(runs), " from the lower left corner")]
    return parts


def find_end(context: DocumentContext, at: Path) -> str:
    """The end of its elevation at which an upright joint stands, left or right; an empty text elsewhere."""
    project = context.project
    elevation, place = project.get((*at, "elevation")), project.get((*at, "at"))
    if project.get((*at, "runs")) != "vertical" or elevation is None or place is None:
        return ""
    width = project.get(("elevations", elevation.mark, "width"))
    if place.amount == 0:
        return "left"
    return "right" if width is not None and place.amount == width.amount else ""


def _is_open_below(context: DocumentContext, at: Path) -> bool:
    """Whether the joint is told, or its length is given, as that of the heads and jambs of the openings."""
    project = context.project
    elevation, length = project.get((*at, "elevation")), project.get((*at, "length"))
    if elevation is None:
        return False
    if length is None:
        return {str(mark) for mark in project.get((*at, "serves"))} <= find_open_sills(project, elevation.mark)
    openings = [("elevations", elevation.mark, "openings", str(mark)) for mark in project.get((*at, "serves"))]
    sizes = [(project.get((*one, "width")), project.get((*one, "height"))) for one in openings]
    if any(None in size for size in sizes):
        return False
    return bool(length.amount == sum(width.amount + 2 * height.amount for width, height in sizes))


def _length(context: DocumentContext, at: Path) -> Any:
    """The length that is given, else the whole height or width of the elevation that the joint runs over."""
    side = _SIDES.get(str(context.project.get((*at, "runs"))))
    elevation = context.project.get((*at, "elevation"))
    if context.project.is_given((*at, "length")) or side is None or elevation is None:
        return context.display((*at, "length"))
    return context.display(("elevations", elevation.mark, side))


def _needed(context: DocumentContext, at: Path) -> Any:
    """The computed width and whether it is met, or the missing field."""
    try:
        working = context.resolve(at, "joint-width")
    except Absent as absent:
        return name_missing(context, absent)
    assert isinstance(working, Working)
    needed = working.quantity
    field = context.project.schema.field_at((*at, "width"))
    text = context.text(needed, field)
    outcome = compare(context.project.get((*at, "width")), Sense.AT_LEAST, needed)
    answer = _OUTCOMES.get(outcome, "width pending")
    return [DisplayValue(text, needed, OF_A_SUM, about="Joint width needed"), f", {answer}"]


def _tell_depths(context: DocumentContext, at: Path) -> list[Any]:
    """`, depth 3/8 in to 1/2 in`; nothing where there is no room or it is not known."""
    depths = find_depths(context, at)
    return [", depth ", depths[0], " to ", depths[1]] if depths else []


def find_depths(context: DocumentContext, at: Path) -> tuple[DisplayValue, ...]:
    """The least and the greatest depth that a bead may have; none where there is no room or it is not known.

    Nor where they lie closer together than the width itself can be held: no hand tools a bead to that.
    """
    try:
        working = context.resolve(at, "joint-depth")
    except (Absent, Refused):  # no bead has room in a joint that is narrower than its least depth
        return ()
    assert isinstance(working, Working)
    (last,) = working.secondary_steps
    least, most = working.quantity, Quantity.of(repr(last.value), last.unit)
    tolerance = context.project.get((*at, "tolerance"))
    if tolerance is not None and compare(most - least, Sense.AT_LEAST, tolerance) is Outcome.OUTSIDE:
        return ()
    depth, field = context.project.get((*at, "depth")), context.project.schema.field_at((*at, "depth"))
    if depth is None or compare(least, Sense.AT_LEAST, most) is not Outcome.OUTSIDE:
        return ()
    return tuple(DisplayValue(context.text(bound, field), bound, OF_A_SUM) for bound in (least, most))


def _rod(context: DocumentContext, at: Path) -> list[Any]:
    if context.project.get((*at, "rod_kind")) == "none":
        return ["bond-breaker tape"] if context.project.get((*at, "bond_break_tape")) else ["none"]
    kind = context.display((*at, "rod_kind"))
    return [kind if kind.open else context.display((*at, "rod_diameter"))]


def _of_penetrations(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    """The joints around pipes and brackets, sealed against a collar with the only sealant of the project."""
    sealants = list_marks(context, "sealants")
    for mark in list_marks(context, "details"):
        at = ("details", mark)
        if not context.project.is_given((*at, "joint_width")):
            continue
        width, depth, rod, place = (
            context.display((*at, key)) for key in ("joint_width", "joint_depth", "rod_diameter", "at")
        )
        sealant = sealants[0] if len(sealants) == 1 else "–"
        where = [name_linked(context, (*at, "elevation"), "elevations"), ": ", place]
        yield (
            mark,
            where,
            "–",
            sealant,
            [width, " x ", depth],
            "–",
            rod,
            [*_tested_face(context, sealants), ", collar"],
        )


def _tested_face(context: DocumentContext, sealants: Sequence[str]) -> list[Any]:
    """The face of the wall beside a collar: the one on which the only sealant was tested, else the base coat."""
    face = context.project.get(("sealants", sealants[0], "reported_face")) if len(sealants) == 1 else None
    tint = "tinted " if face == "primer" and context.project.get(("primer", "tinted")) else ""
    return [tint, words(face) if face else "base coat"]


def _bond_face(context: DocumentContext, at: Path) -> list[Any]:
    """`tinted primer, window frame`; the face of the report too where it is another one."""
    face = context.display((*at, "bond_face"))
    tint = "tinted " if face == "primer" and context.project.get(("primer", "tinted")) else ""
    frames: list[Any] = [", ", " and ".join(_list_frames(context, at)), " frame"] if _list_frames(context, at) else []
    if flashing := name_flashing(context, at):
        frames += [", ", flashing]
    if context.project.get((*at, "kind")) == "dissimilar_material":
        other = (*at, "other_face")
        frames += [", ", context.display(other) if context.project.is_given(other) else "adjoining material"]
    sealant = context.project.get((*at, "sealant"))
    tested = sealant.get("reported_face") if sealant is not None else None
    if tested is None or face == tested:
        return [tint, face, *frames]
    report = sealant.get("adhesion_report")
    named = f" ({report.mark})" if report is not None else ""
    return [tint, face, f", tested on {words(tested)}{named}", *frames]


def _list_frames(context: DocumentContext, at: Path) -> list[str]:
    """The kinds of openings whose frame is the other face of a joint; any opening where it names none."""
    project, elevation = context.project, context.project.get((*at, "elevation"))
    if project.get((*at, "kind")) != "opening_perimeter":
        return []
    served = project.get((*at, "serves")) or () if elevation is not None else ()
    kinds = [project.get(("elevations", elevation.mark, "openings", str(mark), "kind")) for mark in served]
    return list(dict.fromkeys(words(str(kind)) for kind in kinds if kind is not None)) or ["opening"]
