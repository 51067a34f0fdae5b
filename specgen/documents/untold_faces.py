"""The new walls of which no list of faults tells whether the face that board is glued to is bare."""

from specgen.computing.substrates import MASONRY
from specgen.documents.context import DocumentContext
from specgen.documents.deciding import is_undecided
from specgen.documents.standing_walls import list_standing

# The rule on the face that board is glued to.
PREPARED = "ATT-06"


def list_untold_faces(context: DocumentContext) -> list[str]:
    """The marks of the new walls of concrete or masonry that are glued to, and whose face may be painted or treated."""
    if not (context.is_marked and is_undecided(context)):
        return []
    project, standing = context.project, list_standing(context)
    glued = [mark for mark in project.members[("walls",)] if project.get(("walls", mark, "wrb", "kind")) == "none"]
    kinds = {mark: project.get(("walls", mark, "substrate", "kind")) for mark in glued}
    return [mark for mark, kind in kinds.items() if kind in MASONRY and mark not in standing]
