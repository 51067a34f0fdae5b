"""Whether code asks for special inspection of the EIFS."""

from specgen.computing.substrates import SHEETS, is_masonry
from specgen.model.absence import Absent, all_known, any_known
from specgen.model.typed_views import Description, Wall
from specgen.model.working import Lookup
from specgen.resolving.provider import Ask, Provider
from specgen.standards import find_source

IBC = find_source("ibc_inspection_due")
# That of a barrier coating alone stands in a paragraph of its own.
COATING = find_source("ibc_inspection_of_coatings")

UNREAD = "the local code is not evaluated: ask the authority having jurisdiction"
_COATED = "fluid-applied WRB over sheathing"


def for_project(project: Description, ask: Ask) -> Lookup:
    """Yes where any wall of the project needs it."""
    if project.code.model == "other":
        return Lookup("special-inspection-due", False, UNREAD, ())
    if project.code.model != "ibc":
        return Lookup("special-inspection-due", False, "required by the International Building Code only", (IBC,))
    missing = None
    reasons: dict[str, list[str]] = {}
    for wall in project.walls:
        try:
            reasons.setdefault(_why(wall), []).append(wall.mark)
        except Absent as absent:
            missing = missing or absent
    reasons.pop("", None)
    if reasons:
        why = "; ".join(f"{', '.join(marks)}: {why}" for why, marks in reasons.items())
        return Lookup("special-inspection-due", True, why, (COATING if list(reasons) == [_COATED] else IBC,))
    if missing:
        raise missing
    return Lookup(
        "special-inspection-due", False, "each wall is drained over its barrier, or is concrete or masonry", (IBC,)
    )


def list_exempt(project: Description) -> list[str]:
    """The marks of the walls known to need none, whatever the others need."""
    exempt = []
    for wall in project.walls:
        try:
            if not _why(wall):
                exempt.append(wall.mark)
        except Absent:
            continue
    return exempt


def _why(wall: Wall) -> str:
    """Why a wall needs it; empty where it does not."""
    if wall.substrate.kind in SHEETS and wall.wrb.kind == "fluid_applied":
        return _COATED
    if all_known(lambda: not is_masonry(wall), lambda: _is_undrained(wall)):
        return "EIFS without drainage over a WRB"
    return ""


def _is_undrained(wall: Wall) -> bool:
    return any_known(lambda: wall.drainage.kind == "none", lambda: wall.wrb.kind == "none")


PROVIDER = Provider(
    name="special-inspection-due",
    title="Special inspection required",
    each=(),
    compute=for_project,
    reads=("code.model",),
)
