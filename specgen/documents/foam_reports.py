"""The reports on foam plastic that the code requires of the walls, and what the architect is to confirm of them."""

from collections.abc import Iterable
from typing import Any, NamedTuple, cast

from specgen.computing.foam_plastic import FOAM, RESTRICTED, foam_at_ledge
from specgen.computing.substrates import MASONRY
from specgen.documents.context import DocumentContext
from specgen.documents.fire_reports import list_reports
from specgen.documents.standing_walls import list_standing
from specgen.documents.views.reports import find_reports
from specgen.model.absence import Absent
from specgen.model.typed_views import WaterDetail
from specgen.quantities.quantity import Quantity

BURNING, HEAT, RESISTANCE = "ASTM E84", "NFPA 259", ("ASTM E119", "UL 263")
# By the model code: where the indexes of foam plastic stand, and its thermal barrier.
SECTIONS = {"ibc": ("2603.3", "2603.4"), "irc": ("R316.3", "R316.4")}

# Who has which exterior coatings tested; the finish may be of another manufacturer than the base coat.
_COATINGS = (
    ("eifs_source", "base coat with mesh", ("base_coat",)),
    ("finish_source", "smoothing, primer, and gloss", ("smoothing", "primer", "gloss")),
)


class FoamReport(NamedTuple):
    """A report that the code requires and nobody has listed."""

    name: str  # as it prints, with the test method
    section: str  # of the code
    walls: tuple[str, ...]
    owed_by: str = "eifs_source"  # its role


def list_missing_foam_reports(context: DocumentContext) -> list[FoamReport]:
    """Each report with the walls that lack it: burning, potential heat, and resistance of a wall that is rated."""
    walls, strict = list_foam_walls(context), is_restricted(context)
    if not walls:
        return []
    section = "2603.5.4" if strict else SECTIONS[str(context.project.get(("code", "model")))][0]
    lacking = [(f"{BURNING} report of the board", section, [] if find_reports(context, BURNING) else walls)]
    if strict:
        unheated = [wall for wall in walls if not list_heat(context, wall)]
        rated = f"{' or '.join(RESISTANCE)} report, or accepted analysis, where rated"
        lacking += [(f"{HEAT} report of the board", "2603.5.3", unheated), (rated, "2603.5.1", list_unrated(context))]
    found = [FoamReport(name, at, tuple(marks)) for name, at, marks in lacking if marks]
    return found + list_missing_coat_reports(context, walls) if strict else found


def list_missing_coat_reports(context: DocumentContext, walls: Iterable[str]) -> list[FoamReport]:
    """The reports on surface burning of the coatings, tested apart from the board; asked for in a draft."""
    if not context.is_marked:
        return []
    reported = {material for mark in find_reports(context, BURNING) for material in _list_covered(context, mark)}
    return [
        FoamReport(f"{BURNING} report of the {told}", "2603.5.4", tuple(walls), role)
        for role, told, coats in _COATINGS
        if not reported.issuperset(coats)
    ]


def _list_covered(context: DocumentContext, mark: str) -> tuple[str, ...]:
    return tuple(map(str, context.project.get(("attachments", mark, "covers")) or ()))


def list_foam_walls(context: DocumentContext) -> list[str]:
    """The marks of the walls of foam plastic; none under a code whose sections are not known."""
    if context.project.get(("code", "model")) not in SECTIONS:
        return []
    kinds = {wall: get_kind(context, wall) for wall in context.project.members[("walls",)]}
    return [wall for wall, kind in kinds.items() if kind in FOAM]


def get_kind(context: DocumentContext, wall: str) -> Any:
    """The kind of the insulation board of a wall; None if it is not given."""
    return context.project.get(("walls", wall, "insulation", "kind"))


def is_restricted(context: DocumentContext) -> bool:
    """Whether the walls are of a type of construction that section 2603.5 is about."""
    project = context.project
    return project.get(("code", "model")) == "ibc" and project.get(("code", "construction_type")) in RESTRICTED


def list_heat(context: DocumentContext, wall: str) -> list[str]:
    """The marks of the reports on the potential heat of a wall's board."""
    return list_reports(context.project, HEAT, wall) or list(find_reports(context, HEAT))


def list_resistance(context: DocumentContext, wall: str) -> list[str]:
    """The marks of the reports on the fire resistance of a wall."""
    return [mark for standard in RESISTANCE for mark in list_reports(context.project, standard, wall)]


def list_unrated(context: DocumentContext) -> list[str]:
    """The marks of the walls whose rating, if any, the architect is to confirm."""
    walls = list_foam_walls(context) if is_restricted(context) else []
    return [wall for wall in walls if not list_resistance(context, wall)]


def list_unparted(context: DocumentContext) -> list[str]:
    """The marks of the walls whose thermal barrier the architect is to confirm."""
    return [wall for wall in list_foam_walls(context) if not find_barrier(context, wall)]


class ThickLedge(NamedTuple):
    """A ledge shaped of board, on the board of its wall."""

    mark: str
    wall: str
    thickness: Quantity  # of all board there


def list_thick_ledges(context: DocumentContext) -> list[ThickLedge]:
    """The ledges that make the foam of a wall thicker than its board; none while that is not known."""
    project = context.project
    found = []
    for mark in project.members.get(("details",), ()):
        try:
            detail = cast(WaterDetail, project.view(("details", mark)))
            thickness = foam_at_ledge(detail)
        except Absent:
            continue
        if thickness is not None:
            found.append(ThickLedge(mark, detail.elevation.wall.mark, thickness))
    return found


def list_unknown(context: DocumentContext) -> list[str]:
    """Those of them that may be concrete or masonry for all that the project tells of what the old coating is on."""
    at = ("substrate", "base")
    standing = set(list_standing(context))
    return [m for m in list_unparted(context) if m in standing and context.project.get(("walls", m, *at)) is None]


def find_barrier(context: DocumentContext, wall: str) -> tuple[tuple[str, ...], ...]:
    """The paths of what parts the board of a wall from the interior; empty where nothing given does."""
    at = ("walls", wall, "substrate")
    kind, base = (context.project.get((*at, name)) for name in ("kind", "base"))
    if kind in MASONRY and kind != "icf":
        return ((*at, "kind"),)
    if kind == "existing_coated" and base in ("concrete", "masonry"):
        return ((*at, "base"),)
    return _find_wallboard(context, wall)


def _find_wallboard(context: DocumentContext, wall: str) -> tuple[tuple[str, ...], ...]:
    """The interior gypsum board among the layers of a wall; sheathing outside the studs is no wallboard."""
    path = ("walls", wall, "layers")
    names = [(*path, at, "name") for at in context.project.members.get(path, ())]
    boards = [name for name in names if {"gypsum", "wallboard"} <= set(str(context.project.get(name) or "").split())]
    return tuple(boards[:1])
