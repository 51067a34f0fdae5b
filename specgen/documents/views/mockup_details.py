"""Every detail shown on the mockup: its mark, what it stands for on the work, and what is evaluated there."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.views._represented import name_represented
from specgen.model.evaluation import evaluate

_EVALUATED = {
    "full_panel": ("Full panel", "Flatness, film, gloss, color, appearance"),
    "joint_crossing": ("Aesthetic joint crossing", "Profile, line, and edges of the joint"),
    "outside_corner": ("Outside corner", "Edge straight; aesthetic joints aligned"),
    "opening": ("Opening with returns", "Diagonal mesh, returns, edges at masking"),
    "sealant_joint": ("Sealant joint", "Bond faces free of gloss, bead, hand pull"),
    "grade_end": ("Termination above grade", "Back-wrap, clearance, drainage outlet"),
    "each_mesh_zone": ("Each mesh zone", "No mesh pattern, color, or lap edge"),
    "each_color": ("Each color", "Range samples held beside it"),
    "day_stop": ("End-of-day stop at a joint or corner", "Not visible from the viewing distance"),
    "recoat_patch": ("Recoated panel", "Not visible from the viewing distance"),
    "build_up_steps": (
        "Stepped build-up, half of the mockup",
        "Each layer and coat in view; film and smoothing thickness",
    ),
}
# What the opening of the mockup shows where openings of the work have it.
_OF_OPENINGS = {
    "sill_pan": ("Sill of the opening", "Pan sloped outward, end dams, lap over the layer below"),
    "head_flashing": ("Head of the opening", "Flashing past the finished face, end dams, open weeps"),
}


def mark_details(context: DocumentContext) -> dict[str, str]:
    """The mark of each detail that the project's mockup shows, `M1` and on, in the order of the project."""
    details = context.project.get(("mockup", "includes")) or ()
    return {detail: f"M{number}" for number, detail in enumerate(details, 1)}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each detail of the project's mockup, and of its opening one for each flashing of the work."""
    lines: list[tuple[Any, ...]] = []
    for detail, mark in mark_details(context).items():
        title, evaluated = _EVALUATED[detail]
        lines.append((mark, title, name_represented(context, detail), evaluated))
        if detail == "opening":
            lines += [
                (mark, what, name_represented(context, name), how)
                for name, (what, how) in _OF_OPENINGS.items()
                if evaluate(f"elevations.*.openings.*.{name} = yes", context.project)
            ]
    return TableView(("Mark", "Detail", "On the work", "Evaluate"), tuple(lines), (8, 26, 36, 30))
