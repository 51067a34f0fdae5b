"""The water details that the project has, in section, from the sills of openings to the lower edge."""

from collections.abc import Callable, Iterator
from typing import NamedTuple

from specgen.documents.context import DocumentContext
from specgen.documents.figures import meeting_sections, water_sections
from specgen.documents.figures.labels import shorten
from specgen.documents.figures.section_sheet import PAGE_WIDTH, SIZE, Point, Sheet
from specgen.documents.joint_flashing import is_flashed
from specgen.documents.marks import list_marks, name_opening
from specgen.documents.members import span_marks
from specgen.model.block import Figure

_COLUMNS = 3  # of details beside each other in one figure
_TALL = 46.0  # of a detail with its title
# How each detail is drawn.
_DRAWN: dict[str, tuple[str, Callable[[Sheet, Point, bool], list[tuple[Point, Point]]]]] = {
    "sill": ("Sill with pan", water_sections.draw_sill),
    "threshold": ("Threshold with pan", water_sections.draw_threshold),
    "head": ("Head with flashing", water_sections.draw_head),
    "floor_line": ("Floor line with flashing", water_sections.draw_floor_line),
    "parapet": ("Parapet with cap", water_sections.draw_parapet),
    "roof_end": ("Roof end with kick-out flashing", water_sections.draw_roof_end),
    "roof_below": ("Roof below with flashing", meeting_sections.draw_roof_below),
    "ledge": ("Ledge of board", meeting_sections.draw_ledge),
    "capped_ledge": ("Ledge with metal cap", meeting_sections.draw_capped_ledge),
    "penetration": ("Penetration with collar", meeting_sections.draw_penetration),
    "lower_edge": ("Lower edge with starter", water_sections.draw_lower_edge),
    "corner": ("Outside corner, from above", meeting_sections.draw_corner),
}
_SEALED = ("penetration", True)
_WALLS = {True: " (WRB)", False: " (no WRB)"}
_DRIP, _WEEPS = "Drip past the finished face", "Weeps above the flashing left open"
_SAID = {
    "sill": ("Pan sloped outward, turned up behind the frame and at its ends", _DRIP, "Front of the pan left open"),
    "threshold": (
        "Pan below the threshold, turned up behind it and at its ends",
        "Front turned down over the wall below, no board",
        "Front of the pan left open",
    ),
    "head": ("Flashing sloped outward, {lapped}, with end dams", _DRIP, _WEEPS, "Sealant, frame to flashing"),
    "floor_line": (
        "Flashing at the top of the joint, {lapped}",
        _DRIP,
        _WEEPS,
        "Sealant on backer rod, flashing to board below",
        "WRB on membrane, looped",
    ),
    "parapet": (
        "Cap sloped to the roof",
        "Membrane over the wall, both faces, before boards",
        "Second strip of membrane, over the board, before the cap",
        "Drip past the face, both sides",
    ),
    "roof_end": (
        "Kick-out flashing, to lead the water into the gutter",
        "Step flashing, {lapped}",
        "EIFS ended above the roofing and back-wrapped",
    ),
    "roof_below": (
        "{roof} flashing, minimum {upturn} up the wall, {lapped}",
        "EIFS ended above the roofing and back-wrapped",
        "Clearance above the roofing{clearance}",
    ),
    "capped_ledge": (
        "Metal cap sloped outward, upper leg turned up behind the board above",
        _DRIP,
        "Ledge, per the architect's drawings",
    ),
    "ledge": (
        "Added board, top sloped outward",
        "Drip groove in the underside",
        "Full bed of adhesive between board and board",
        "Base coat, mesh, and coats around the ledge",
    ),
    "penetration": (
        "Collar sealed around the pipe, {lapped}",
        "Sealant on backer rod, edge of the board to collar",
        "Pipe or fitting",
    ),
    "lower_edge": (
        "Starter with drip{open}",
        "Base coat and mesh over the starter",
        "Clearance above grade",
    ),
    "corner": (
        "Boards interlocked, courses lapped alternately",
        "Base coat and mesh carried around the corner",
    ),
}


class Shown(NamedTuple):
    """A detail, where the project has it, and whether its wall has a barrier."""

    kind: str
    marks: list[str]
    barrier: bool
    title: str


def draw(context: DocumentContext) -> tuple[Figure, ...]:
    """Figures of up to three details that the project has; none where it has none."""
    shown = list(_find_shown(context))
    return tuple(_draw_details(context, shown[n : n + _COLUMNS]) for n in range(0, len(shown), _COLUMNS))


def _find_shown(context: DocumentContext) -> Iterator[Shown]:
    """Each detail, that of walls with a barrier apart from that of walls without."""
    found: dict[tuple[str, bool], list[str]] = {}
    for kind, barrier, mark in (
        *_of_openings(context),
        *_of_joints(context),
        *_of_details(context),
        *_of_meetings(context),
        *_of_lower_edges(context),
        *_of_corners(context),
    ):
        found.setdefault((kind, barrier), []).append(mark)
    for kind in _DRAWN:
        for barrier in (True, False):
            if (kind, barrier) in found:
                apart = (kind, not barrier) in found
                title = f"{_DRAWN[kind][0]}{_WALLS[barrier] if apart else ''}"
                yield Shown(kind, found[kind, barrier], barrier, title)


def _of_openings(context: DocumentContext) -> Iterator[tuple[str, bool, str]]:
    project = context.project
    for face in list_marks(context, "elevations"):
        barrier = _has_barrier(context, ("elevations", face))
        for mark in project.members.get(("elevations", face, "openings"), ()):
            at = ("elevations", face, "openings", mark)
            height = project.get((*at, "y"))
            at_base = project.get((*at, "kind")) == "door" and height is not None and not height.amount
            name = name_opening(context, face, mark)
            if project.get((*at, "sill_pan")) is True:
                yield "threshold" if at_base else "sill", barrier, name
            if project.get((*at, "head_flashing")) is True:
                yield "head", barrier, name


def _of_joints(context: DocumentContext) -> Iterator[tuple[str, bool, str]]:
    for mark in list_marks(context, "joints"):
        at = ("joints", mark)
        if context.project.get((*at, "kind")) == "floor_line" and is_flashed(context, at):
            elevation = context.project.get((*at, "elevation"))
            yield "floor_line", _has_barrier(context, ("elevations", elevation.mark)), mark


def _of_details(context: DocumentContext) -> Iterator[tuple[str, bool, str]]:
    """Parapets and roof ends."""
    project = context.project
    for mark in list_marks(context, "details"):
        elevation = project.get(("details", mark, "elevation"))
        barrier = _has_barrier(context, ("elevations", elevation.mark) if elevation is not None else ())
        for kind, name in (("parapet", "cap"), ("roof_end", "diverter")):
            if project.get(("details", mark, "kind")) == kind and project.get(("details", mark, name)) is True:
                yield kind, barrier, mark


def _of_meetings(context: DocumentContext) -> Iterator[tuple[str, bool, str]]:
    """Roofs below the face, ledges with and without a cap, and sealed penetrations, each on its wall."""
    project = context.project
    for mark in list_marks(context, "details"):
        kind, elevation, cap, sealed = (
            project.get(("details", mark, name)) for name in ("kind", "elevation", "cap", "sealed")
        )
        if kind == "ledge" and cap is True:
            kind = "capped_ledge"
        if kind in ("roof_below", "capped_ledge") or (kind == "ledge" and cap is False) or (kind, sealed) == _SEALED:
            yield kind, _has_barrier(context, () if elevation is None else ("elevations", elevation.mark)), mark


def _of_corners(context: DocumentContext) -> Iterator[tuple[str, bool, str]]:
    """The outside corners, each told once by the elevation to its left."""
    project = context.project
    for face in list_marks(context, "elevations"):
        met = project.get(("elevations", face, "right_meets"))
        if project.get(("elevations", face, "right_end")) == "outside_corner" and met is not None:
            yield "corner", _has_barrier(context, ("elevations", face)), f"{face}/{met.mark}"


def _of_lower_edges(context: DocumentContext) -> Iterator[tuple[str, bool, str]]:
    """The elevations that end above grade, where the project has starters."""
    project = context.project
    marks = list_marks(context, "accessories")
    if any(project.get(("accessories", mark, "kind")) == "starter" for mark in marks):
        for face in list_marks(context, "elevations"):
            if project.is_given(("elevations", face, "grade_clearance")):
                yield "lower_edge", _has_barrier(context, ("elevations", face)), face


def _has_barrier(context: DocumentContext, elevation: tuple[str, ...]) -> bool:
    """Whether the wall of an elevation has a barrier; any wall where it names none."""
    wall = context.project.get((*elevation, "wall")) if elevation else None
    walls = [wall.mark] if wall is not None else list_marks(context, "walls")
    return any(context.project.get(("walls", mark, "wrb", "kind")) not in (None, "none") for mark in walls)


def _draw_details(context: DocumentContext, shown: list[Shown]) -> Figure:
    sheet, key = Sheet(), dict[str, str]()
    column = PAGE_WIDTH / _COLUMNS
    for number, detail in enumerate(shown):
        x, y = number * column + 1, 2.0
        sheet.say(x, y + SIZE, detail.title, bold=True)
        sheet.say(x, y + 2.5 * SIZE, shorten(span_marks(detail.marks), column - 3, SIZE))
        places = _DRAWN[detail.kind][1](sheet, (x, y + 9), detail.barrier)
        for (at, place), said in zip(places, _list_words(context, detail), strict=True):
            sheet.number(at, place, key.setdefault(said, str(len(key) + 1)))
    down = sheet.list_key([(number, said) for said, number in key.items()], _TALL + 2)
    caption = f"Water details, not to scale: {'; '.join(_name(detail) for detail in shown)}"
    told = ". ".join(f"{detail.title} at {span_marks(detail.marks)}" for detail in shown)
    alt = f"{told}. {'. '.join(f'{number} {said}' for said, number in key.items())}. Not to scale."
    return sheet.finish("water_details", caption, alt, down + 1)


def _name(detail: Shown) -> str:
    return detail.title[:1].lower() + detail.title[1:]


def _list_words(context: DocumentContext, detail: Shown) -> list[str]:
    """What the numbers of a detail stand for."""
    membrane = _find_membrane(context)
    sealed = f"sealed to the wall{f' with {membrane}' if membrane else ''}"
    stripped = f"stripped to the WRB with {membrane or 'membrane'}" if _is_fluid(context) else "lapped by the WRB"
    lapped = stripped if detail.barrier else sealed
    words = {
        "lapped": lapped,
        "open": ", open for drainage" if detail.barrier else "",
        "roof": "Step" if _has_step_flashing(context) else "Roof",
        "upturn": context.limit("roof_below.upturn").text,
        "clearance": _tell_clearance(context, detail.marks),
    }
    return [text.format_map(words) for text in _SAID[detail.kind]]


def _has_step_flashing(context: DocumentContext) -> bool:
    listed = list_marks(context, "accessories")
    return any(context.project.get(("accessories", mark, "kind")) == "step_flashing" for mark in listed)


def _tell_clearance(context: DocumentContext, marks: list[str]) -> str:
    """`, 50 mm` where all of the roofs below have the same; empty for anything else."""
    paths = [("details", mark, "clearance") for mark in marks if mark in list_marks(context, "details")]
    told = {context.display(path).text for path in paths if context.project.get(path) is not None}
    return f", {told.pop()}" if len(told) == 1 else ""


def _is_fluid(context: DocumentContext) -> bool:
    """Whether a barrier is a fluid one, dry before a flashing is set, so that it cannot lap one."""
    walls = list_marks(context, "walls")
    return any(context.project.get(("walls", mark, "wrb", "kind")) == "fluid_applied" for mark in walls)


def _find_membrane(context: DocumentContext) -> str:
    """The product of the first flashing membrane; empty where there is none."""
    for mark in list_marks(context, "accessories"):
        if context.project.get(("accessories", mark, "kind")) == "flashing_membrane":
            return str(context.project.get(("accessories", mark, "product")) or "")
    return ""
