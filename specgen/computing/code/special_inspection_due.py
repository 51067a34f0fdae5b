"""Whether code asks for special inspection of the EIFS."""

from specgen.model.absence import Absent
from specgen.model.typed_views import Description, Wall
from specgen.model.working import Lookup
from specgen.resolving.provider import Ask, Provider
from specgen.standards import find_source

# What lies behind stucco may be framing: it counts as neither.
MASONRY = {"concrete", "concrete_masonry", "aac", "icf", "stone", "existing_brick"}
SHEETS = {"glass_mat_gypsum", "cement_board", "plywood", "osb", "paper_faced_gypsum"}
IBC = find_source("ibc_inspection_due")


def for_project(project: Description, ask: Ask) -> Lookup:
    """Yes where any wall of the project needs it."""
    if project.code.model != "ibc":
        return Lookup("special-inspection-due", False, "only the International Building Code asks for it", (IBC,))
    missing = None
    for wall in project.walls:
        try:
            why = _why(wall)
        except Absent as absent:
            missing = missing or absent
            continue
        if why:
            return Lookup("special-inspection-due", True, f"{wall.mark}: {why}", (IBC,))
    if missing:
        raise missing
    return Lookup(
        "special-inspection-due", False, "every wall is drained over its barrier, or of concrete or masonry", (IBC,)
    )


def _why(wall: Wall) -> str:
    """Why a wall needs it; empty where it does not."""
    kind = wall.substrate.kind
    if kind in SHEETS and wall.wrb.kind == "fluid_applied":
        return "a weather barrier coating lies on the sheathing"
    if kind in MASONRY:
        return ""
    if wall.drainage.kind == "none" or wall.wrb.kind == "none":
        return "the EIFS is not drained over a weather barrier"
    return ""


PROVIDER = Provider(
    name="special-inspection-due", title="Special inspection due", each=(), compute=for_project, reads=("code.model",)
)
