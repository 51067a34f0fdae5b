"""The flashing that a sealant joint bonds to: over the head of an opening, or in a level joint of a drained wall."""

from fractions import Fraction

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
    if is_flashed(context, at):
        return "flashing"
    return "flashing at heads" if list_flashed_heads(context, at) else ""


def list_flashed_heads(context: DocumentContext, at: Path) -> list[Path]:
    """The openings in a perimeter joint whose head has a flashing: the bead there joins frame and flashing."""
    project, elevation = context.project, context.project.get((*at, "elevation"))
    if project.get((*at, "kind")) != "opening_perimeter" or elevation is None:
        return []
    served = project.get((*at, "serves")) or ()
    openings = [("elevations", elevation.mark, "openings", str(mark)) for mark in served]
    return [opening for opening in openings if project.get((*opening, "head_flashing")) is True]


def measure_flashed_heads(context: DocumentContext, at: Path) -> Fraction:
    """The meters of a perimeter joint at heads with a flashing, where no edge of board stands beside the bead."""
    wide = (context.project.get((*opening, "width")) for opening in list_flashed_heads(context, at))
    return sum((width.amount for width in wide if width is not None), Fraction(0))
