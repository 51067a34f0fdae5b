"""Whether code asks for a drained wall."""

from specgen.computing.substrates import is_masonry
from specgen.model.absence import any_known, if_given
from specgen.model.source import Source
from specgen.model.typed_views import Description, Wall, root_of
from specgen.model.working import Lookup
from specgen.resolving.provider import Ask, Provider
from specgen.standards import find_source, load_standards

RESIDENTIAL = {"R-1", "R-2", "R-3", "R-4"}
TYPE_V = ("VA", "VB")
IRC = find_source("irc_drainage").quote("drainage over all but concrete and masonry")


def for_wall(wall: Wall, ask: Ask) -> Lookup:
    """Yes where the model code asks for drainage behind this wall's boards; a code of other make asks nothing here."""
    project = root_of(wall)
    model = project.code.model
    if model == "irc":
        masonry = is_masonry(wall)
        why = "the wall is concrete or masonry" if masonry else "the wall is neither concrete nor masonry"
        return Lookup("drainage-due", not masonry, why, (IRC,))
    if model == "other":
        return Lookup(
            "drainage-due", False, "the local code is not evaluated: ask the authority having jurisdiction", ()
        )
    due, why = _by_building_code(wall, project)
    return Lookup("drainage-due", due, why, (_section_on_drainage(project),))


def _by_building_code(wall: Wall, project: Description) -> tuple[bool, str]:
    """Whether the International Building Code asks for drainage, and why."""
    if any_known(
        lambda: project.code.construction_type not in TYPE_V,
        lambda: wall.framing.kind == "none",
        lambda: _is_painted_masonry(wall),
    ):
        construction = if_given(lambda: project.code.construction_type)
        of_v = construction is None or construction in TYPE_V
        return False, "the wall is not framed" if of_v else f"construction type {construction} is not type V"
    groups = sorted(RESIDENTIAL.intersection(project.code.occupancy_groups))
    if groups:
        return True, f"framed wall of type V, group {', '.join(groups)}"
    return False, "no occupancy in Groups R-1 to R-4"


def _is_painted_masonry(wall: Wall) -> bool:
    return wall.substrate.kind == "existing_coated" and is_masonry(wall)


def _section_on_drainage(project: Description) -> Source:
    """The section of the adopted edition; that of the newest one read where no edition is given."""
    edition = load_standards().editions.get(str(if_given(lambda: project.code.edition)))
    source: Source = edition["drainage_source"] if edition else find_source("ibc_drainage")
    return source.quote("drainage on framed walls of type V, groups R-1 to R-4")


PROVIDER = Provider(
    name="drainage-due",
    title="Drained wall required",
    each=("walls",),
    compute=for_wall,
    # A painted wall is also asked what is below; that is no field of any other wall, and none it could lack.
    reads=(
        "code.model",
        "code.construction_type",
        "code.occupancy_groups",
        "walls.*.framing.kind",
        "walls.*.substrate.kind",
    ),
    order=20,
)
