"""What lines of the acceptance form say of the mockup itself: its straightedge, its tape test, its edge."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.mockup import is_drained, list_built_faces, size_finished, tell_length
from specgen.documents.views._represented import list_joint_sizes
from specgen.quantities.quantity import Quantity

# Lengths in which straightedges are sold, below the long one.
_EDGES = {"ip": ("8 ft", "6 ft", "4 ft"), "si": ("2.5 m", "2 m", "1.5 m")}


def form_words(context: DocumentContext, composer: Composer) -> dict[str, Any]:
    """The names that templates of criteria may use besides the sections of the project."""
    clearance = _find_clearance(context)
    return {
        "long_edge": composer.token(_choose_edge(context)),
        "tape_method": _choose_tape_method(context),
        "least_clearance": composer.token(clearance) if clearance else "",
        "joint_sizes": _tell_joints(context),
        "drained": is_drained(context),
    }


def _tell_joints(context: DocumentContext) -> str:
    """`3/4 in by 3/8 in (J1, J4); 1 in by 1/2 in (J2)` of the joints on the mockup; empty where none is sized."""
    sized = [[getattr(part, "text", part) for part in size] for size in list_joint_sizes(context) if len(size) > 1]
    return "; ".join(f"{''.join(size)} ({marks})" for marks, _, *size in sized)


def _choose_edge(context: DocumentContext) -> str | DisplayValue:
    """The long straightedge, or the longest that a diagonal of the finished part takes."""
    long, finished = context.figure("straightedge.long"), size_finished(context)
    if finished is None:
        return long
    diagonal = sum(side.number("ft") ** 2 for side in finished) ** 0.5
    lengths = [context.limit("straightedge.long").raw, *(Quantity.of(*edge.split()) for edge in _EDGES[context.first])]
    fitting = [length for length in lengths if length.number("ft") <= diagonal]
    chosen = fitting[0] if fitting else lengths[-1]
    return long if chosen == lengths[0] else tell_length(context, chosen)


def _choose_tape_method(context: DocumentContext) -> str:
    """`B` up to the film that a lattice is cut through, `A` above it; empty where the film is not known."""
    project, total = context.project, Quantity.of(0, "mil")
    for coat in ("primer", "gloss"):
        film, coats = (project.get((coat, name)) for name in ("dry_film", "coats"))
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
