"""The flashing that a sealant joint bonds to: over the head of an opening, or in a level joint of a drained wall."""

from specgen.documents.context import DocumentContext
from specgen.model.field import Path

# Joints whose other side is other work than EIFS.
BESIDE_OTHER_WORK = {"opening_perimeter", "penetration", "dissimilar_material", "substrate_change"}


def is_flashed(context: DocumentContext, at: Path) -> bool:
    """Whether a flashing stands at the top of a joint: it is level, between EIFS, and its wall is drained."""
    project = context.project
    kind, elevation = project.get((*at, "kind")), project.get((*at, "elevation"))
    if project.get((*at, "runs")) != "horizontal" or kind in BESIDE_OTHER_WORK or elevation is None:
        return False
    wall = project.get(("elevations", elevation.mark, "wall"))
    return wall is not None and project.get(("walls", wall.mark, "drainage", "kind")) not in (None, "none")


def name_flashing(context: DocumentContext, at: Path) -> str:
    """The flashing that the sealant of a joint bonds to; an empty text where it bonds to none."""
    project, elevation = context.project, context.project.get((*at, "elevation"))
    if is_flashed(context, at):
        return "flashing"
    if project.get((*at, "kind")) != "opening_perimeter" or elevation is None:
        return ""
    openings = [("elevations", elevation.mark, "openings", str(mark)) for mark in project.get((*at, "serves")) or ()]
    heads = any(project.get((*opening, "head_flashing")) is True for opening in openings)
    return "flashing at heads" if heads else ""
