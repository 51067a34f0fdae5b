"""Every detail shown on the mockup, and what is judged there."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.evaluation import evaluate

_LOOKED_AT = {
    "full_panel": ("One full panel", "evenness, gloss, color, flow of the coat"),
    "joint_crossing": ("A crossing of aesthetic joints", "profile, line and edges of the V"),
    "outside_corner": ("An outside corner", "straight edge, lines that meet"),
    "opening": ("An opening with its returns", "diagonal mesh, returns, masking"),
    "sealant_joint": ("A sealant joint", "bond face free of gloss, bead, hand pull"),
    "grade_end": ("The end above grade", "back-wrap, clearance, drainage outlet"),
    "each_mesh_zone": ("Each mesh zone", "no pattern of mesh, no ridge at its edge"),
    "each_color": ("Each color", "range samples beside it"),
    "day_stop": ("A day stop at a joint or corner", "not seen from the viewing distance"),
    "recoat_patch": ("A recoated panel", "not seen from the viewing distance"),
    "build_up_steps": ("A stepped build-up", "every layer and coat in view, film and smoothing thickness"),
}
# What the opening of the mockup shows where openings of the work have it.
_OF_OPENINGS = {
    "sill_pan": ("The sill of that opening", "pan sloped outward, end dams, lap over what is below"),
    "head_flashing": ("The head of that opening", "flashing past the finished face, end dams, weeps open"),
}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each detail of the project's mockup, and of its opening one for each flashing of the work."""
    details = context.project.get(("mockup", "includes")) or ()
    lines = []
    for detail in details:
        lines.append(_LOOKED_AT[detail])
        if detail == "opening":
            lines += [row for name, row in _OF_OPENINGS.items() if _is_planned(context, name)]
    return TableView(("Detail", "What is judged there"), tuple(lines), (40, 60))


def _is_planned(context: DocumentContext, name: str) -> bool:
    """Whether an opening of the work has this flashing."""
    return evaluate(f"elevations.*.openings.*.{name} = yes", context.project)
