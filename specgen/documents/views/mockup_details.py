"""Every detail shown on the mockup, and what is judged there."""

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView

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


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each detail of the project's mockup."""
    details = context.project.get(("mockup", "includes")) or ()
    lines = tuple(_LOOKED_AT[detail] for detail in details)
    return TableView(("Detail", "What is judged there"), lines, (40, 60))
