"""Every detail shown on the mockup: its place, what it stands for on the work, and what is evaluated there."""

from typing import Any

from specgen.documents.color_hold import tell_hold
from specgen.documents.composing import Composer, letter_here
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.mockup import (
    find_corner_side,
    has_lines_at_corners,
    has_mesh_edge_on_line,
    has_starter,
    is_drained,
    list_fluid_walls,
    list_mockup_faces,
    size_finished,
    tell_length,
)
from specgen.documents.views._not_shown import name_not_shown
from specgen.documents.views._represented import name_represented

_EVALUATED = {
    "full_panel": ("Full panel", "Flatness, film, gloss, color, appearance"),
    "joint_crossing": ("Aesthetic joint crossing", "Profile, line, and edges of the joint"),
    "outside_corner": ("Outside corner", "Edge straight; aesthetic joints aligned"),
    "opening": ("Opening with returns", "Diagonal mesh, back-wrapped edges, returns, masked edges"),
    "sill_pan": ("Sill of the opening", "Pan sloped outward, end dams, lap over the layer below"),
    "head_flashing": ("Head of the opening", "Flashing past the finished face, end dams, open weeps"),
    "sealant_joint": ("Sealant joint", "Bond faces free of gloss, bead, hand pull"),
    "grade_end": ("Termination above grade", "Back-wrap, clearance"),
    "each_mesh_zone": ("Each mesh zone", "No mesh pattern, color, or lap edge"),
    "each_color": ("Each color", "Range samples held beside it"),
    "day_stop": ("End-of-day stop at a joint or corner", "Not visible from the viewing distance"),
    "recoat_patch": ("Recoated panel", "Not visible from the viewing distance"),
    "build_up_steps": ("Stepped build-up", "Each layer and coat in view; thickness of base coat, smoothing"),
    "test_area": ("Test area", "Dry film, tape, pull-off"),
}
# What is evaluated besides where the walls of the mockup have it.
_MORE = {
    "grade_end": (is_drained, ", drainage outlet"),
    "test_area": (list_fluid_walls, ", WRB thickness"),
}
# What the opening of the mockup shows where openings of the work have it.
_OF_OPENINGS = ("sill_pan", "head_flashing")


def list_places(context: DocumentContext) -> dict[str, str]:
    """The number of the place of each detail that the mockup shows, `1` and on; `4a`, `4b` for parts of an opening."""
    details = context.project.get(("mockup", "includes")) or ()
    places: dict[str, str] = {}
    for number, detail in enumerate(details, 1):
        parts = [detail, *(_flashings(context) if detail == "opening" else ())]
        places |= {part: f"{number}{'abc'[at] if len(parts) > 1 else ''}" for at, part in enumerate(parts)}
    if details and context.project.get(("mockup", "destructive_area_apart")) is not False:
        places["test_area"] = str(len(details) + 1)
    return places


def name_places(context: DocumentContext) -> str:
    """`1 full panel; 2 aesthetic joint crossing`: a key of the places in one sentence; empty where none is given."""
    said = ((number, _name_detail(context, detail), detail) for detail, number in list_places(context).items())
    return "; ".join(
        f"{number} {title[:1].lower()}{title[1:]}{_tell_held(context) if detail == 'each_color' else ''}"
        for number, title, detail in said
    )


def _tell_held(context: DocumentContext) -> str:
    """` (hold for HEA-03b, D05)` behind the colors, where the heat of one of them is open."""
    marks = context.project.members.get(("colors",), ())
    held = dict.fromkeys(tell_hold(context, mark) for mark in marks)
    told = ", ".join(filter(None, held))
    return f" ({told})" if told else ""


def _name_detail(context: DocumentContext, detail: str) -> str:
    """The title of a detail; of the only color its mark."""
    colors = context.project.members.get(("colors",), ())
    return f"Color {colors[0]}" if detail == "each_color" and len(colors) == 1 else _EVALUATED[detail][0]


def _flashings(context: DocumentContext) -> list[str]:
    """The flashings that an opening of the elevations shown has."""
    opened = [
        ("elevations", face, "openings", opening)
        for face in list_mockup_faces(context)
        for opening in context.project.members.get(("elevations", face, "openings"), ())
    ]
    return [name for name in _OF_OPENINGS if any(context.project.get((*one, name)) is True for one in opened)]


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each place of the project's mockup."""
    reduced = _list_reduced(context)
    lines: list[tuple[Any, ...]] = []
    for detail, place in list_places(context).items():
        title, evaluated = _name_detail(context, detail), _EVALUATED[detail][1]
        if detail == "grade_end" and has_starter(context):
            evaluated = "Starter level, drip, mesh carried over it, clearance"
        more = _MORE[detail][1] if detail in _MORE and _MORE[detail][0](context) else ""
        shown: list[Any] = [*name_represented(context, detail), *reduced.get(detail, ())]
        lines.append((place, title, shown, f"{evaluated}{more}"))
    missing = name_not_shown(context)
    if lines and missing:
        lines.append(("–", "Not on the mockup", missing, "The first of each in place, before the rest"))
    return TableView(("Place", "Detail", "On the work", "Evaluate"), tuple(lines), (7, 25, 38, 30))


def _list_reduced(context: DocumentContext) -> dict[str, list[Any]]:
    """What is said of details besides: what the mockup keeps of the joints of the work, what is too large for it."""
    finished = size_finished(context)
    side = _name_return(context)
    if has_mesh_edge_on_line(context):
        side["each_mesh_zone"] = ["; edge at an aesthetic joint"]
    if has_lines_at_corners(context):
        side["opening"] = ["; aesthetic joints end on its corners"]
    panel = [context.project.get(("panel_limits", name)) for name in ("max_width", "max_height")]
    if finished is None or None in panel:
        return side
    (width, height), (wide, high) = finished, panel
    tells: dict[str, list[Any]] = {**side}
    if width < wide or height < high:
        least = [tell_length(context, min(pair)) for pair in ((width, wide), (height, high))]
        tells["full_panel"] = ["; on the mockup ", least[0], " by ", least[1]]
    if width < wide * 2:
        for detail in ("opening", "recoat_patch"):
            tells[detail] = ["; reduced in size on the mockup", *side.get(detail, ())]
    return tells


def _name_return(context: DocumentContext) -> dict[str, list[Any]]:
    """How wide the mockup runs round its corner: the smallest side of a panel."""
    return {
        "outside_corner": [
            "; return on the mockup minimum ",
            letter_here(context.limit("panel.least_side")),
            f" wide, at the {find_corner_side(context)} edge",
        ]
    }
