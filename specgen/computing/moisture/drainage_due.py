"""Whether code asks for a drained wall."""

from specgen.model.typed_views import Wall, root_of
from specgen.model.working import Lookup
from specgen.resolving.provider import Ask, Provider
from specgen.standards import find_source

# What lies behind stucco may be framing: it counts as neither.
MASONRY = {"concrete", "concrete_masonry", "aac", "icf", "stone", "existing_brick"}
RESIDENTIAL = {"R-1", "R-2", "R-3", "R-4"}
IBC = find_source("ibc_1407").quote("drainage on framed walls of type V, groups R-1 to R-4")
IRC = find_source("irc_r703").quote("drainage over all but concrete and masonry")


def for_wall(wall: Wall, ask: Ask) -> Lookup:
    """Yes where the model code asks for drainage behind this wall's boards; a code of other make asks nothing here."""
    project = root_of(wall)
    model = project.code.model
    if model == "irc":
        masonry = wall.substrate.kind in MASONRY
        why = "the wall is concrete or masonry" if masonry else "the wall is neither concrete nor masonry"
        return Lookup("drainage-due", not masonry, why, (IRC,))
    if model == "other":
        return Lookup("drainage-due", False, "the local code is no model code read here: ask the building official", ())
    if wall.framing.kind == "none":
        return Lookup("drainage-due", False, "the wall is not framed", (IBC,))
    if project.code.construction_type not in ("VA", "VB"):
        return Lookup(
            "drainage-due", False, f"construction type {project.code.construction_type} is not type V", (IBC,)
        )
    groups = sorted(RESIDENTIAL.intersection(project.code.occupancy_groups))
    if groups:
        return Lookup("drainage-due", True, f"framed wall of type V, group {', '.join(groups)}", (IBC,))
    return Lookup("drainage-due", False, "no group from R-1 to R-4", (IBC,))


PROVIDER = Provider(
    name="drainage-due",
    title="Drained wall due",
    each=("walls",),
    compute=for_wall,
    reads=(
        "code.model",
        "code.construction_type",
        "code.occupancy_groups",
        "walls.*.framing.kind",
        "walls.*.substrate.kind",
    ),
    order=20,
)
