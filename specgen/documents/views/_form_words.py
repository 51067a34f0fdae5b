"""What lines of the acceptance form say of the mockup itself: its straightedge, its tape test, its edge."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.mockup import (
    has_starter,
    is_drained,
    list_built_faces,
    list_built_joints,
    list_fluid_walls,
    list_mockup_walls,
    size_finished,
    tell_length,
)
from specgen.documents.views.joints import find_depths
from specgen.model.field import Path
from specgen.quantities.quantity import Quantity

# Lengths in which straightedges are sold, below the long one.
_LEVEL, _PLUMB = "level", "plumb"
_EDGES = {"ip": ("8 ft", "6 ft", "4 ft"), "si": ("2.5 m", "2 m", "1.5 m")}


def form_words(context: DocumentContext, composer: Composer) -> dict[str, Any]:
    """The names that templates of criteria may use besides the sections of the project."""
    clearance = _find_clearance(context)
    long_edge, edge_line = _choose_edge(context)
    return {
        "long_edge": composer.token(long_edge),
        "edge_line": edge_line,
        "edge_note": _note_edge(context, composer, long_edge),
        "tape_method": _choose_tape_method(context),
        "least_clearance": composer.token(clearance) if clearance else "",
        "joint_sizes": _tell_joints(context),
        "drained": is_drained(context),
        "has_starter": has_starter(context),
        "least_base_coat": _tell_least(context, composer, list_mockup_walls(context), "base_coat")
        or composer.token(context.limit("base_coat.dry_thickness_least")),
        "least_wrb": _tell_least(context, composer, list_fluid_walls(context), "wrb") or "per its data sheet",
    }


def _tell_least(context: DocumentContext, composer: Composer, walls: tuple[str, ...], layer: str) -> str:
    """`3/32 in`, or `3/32 in (W1), 1/8 in (W2)` of the dry layer of walls; empty where one is not given."""
    paths = {wall: ("walls", wall, layer, "dry_thickness") for wall in walls}
    if not all(context.project.is_given(path) for path in paths.values()):
        return ""
    given = {wall: context.display(path) for wall, path in paths.items()}
    of_text: dict[str, list[str]] = {}
    for wall, thickness in given.items():
        of_text.setdefault(thickness.text, []).append(wall)
    said = {text: composer.token(given[marks[0]]) for text, marks in of_text.items()}
    if len(said) == 1:
        return "".join(said.values())
    return ", ".join(f"{token} ({', '.join(of_text[text])})" for text, token in said.items())


def _tell_joints(context: DocumentContext) -> str:
    """`3/4 in ± 1/8 in by 3/8 in to 1/2 in (J1, J4)` of the joints on the mockup; empty where none is sized."""
    sizes: dict[str, list[str]] = {}
    for mark in list_built_joints(context):
        if said := _tell_size(context, ("joints", mark)):
            sizes.setdefault(said, []).append(mark)
    return "; ".join(f"{said} ({', '.join(marks)})" for said, marks in sizes.items())


def _tell_size(context: DocumentContext, at: Path) -> str:
    """Width with its tolerance by what the depth may be, else by the depth; empty where one is not given."""
    width, depth, tolerance = (context.display((*at, name)) for name in ("width", "depth", "tolerance"))
    if width.open or depth.open:
        return ""
    within, depths = "" if tolerance.open else f" ± {tolerance}", find_depths(context, at)
    nominal = f"{depth}, tolerance of the depth per the sealant manufacturer's written instructions"
    return f"{width}{within} by {' to '.join(map(str, depths)) or nominal}"


def _choose_edge(context: DocumentContext) -> tuple[str | DisplayValue, str]:
    """The long straightedge, or the longest that a side of the finished part takes, and the line along that side."""
    long, finished = context.figure("straightedge.long"), size_finished(context)
    if finished is None:
        return long, _LEVEL
    width, height = finished
    lengths = [context.limit("straightedge.long").raw, *(Quantity.of(*edge.split()) for edge in _EDGES[context.first])]
    fitting = [length for length in lengths if length <= max(width, height)]
    chosen = fitting[0] if fitting else lengths[-1]
    line = _LEVEL if width >= min(chosen, height) else _PLUMB
    return long if chosen == lengths[0] else tell_length(context, chosen), line


def _note_edge(context: DocumentContext, composer: Composer, chosen: str | DisplayValue) -> str:
    """For what straightedge the project's own limit is given, where the mockup takes a shorter one; else empty."""
    long = context.figure("straightedge.long")
    if chosen == long or not context.project.is_given(("finish", "flatness_long")):
        return ""
    return f"; limit given for a {composer.token(long)} straightedge, longer than the mockup takes"


def _choose_tape_method(context: DocumentContext) -> str:
    """`B` up to the film that a lattice is cut through, `A` above it; empty where the film is not known.

    The film is the thickest that the project allows, where it tells one.
    """
    project, total = context.project, Quantity.of(0, "mil")
    for coat in ("primer", "gloss"):
        film, most, coats = (project.get((coat, name)) for name in ("dry_film", "most_dry_film", "coats"))
        film = film if most is None else most
        if film is None or coats is None:
            return ""
        total = total + film * coats
    return "B" if total <= context.limit("adhesion.tape_film").raw else "A"


def _find_clearance(context: DocumentContext) -> DisplayValue | None:
    """The least clearance above grade of the elevations that the mockup is built on, or shows."""
    given = [
        context.display(("elevations", face, "grade_clearance"))
        for face in list_built_faces(context)
        if context.project.is_given(("elevations", face, "grade_clearance"))
    ]
    return min(given, key=lambda clearance: clearance.raw, default=None)
