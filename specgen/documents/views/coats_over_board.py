"""What lies over the board of each wall, to the color and its gloss; what is not given is asked for."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import count_things
from specgen.documents.members import span_marks
from specgen.documents.mesh_name import name_mesh
from specgen.documents.views._cells import join_cells
from specgen.documents.views._concerned import list_colors
from specgen.documents.views._impact_zones import tell_zones
from specgen.documents.wall_areas import list_elevations
from specgen.model.field import Path
from specgen.model.value_text import words

# Behind the figures of a base coat whose product nobody has named, which the open items ask to confirm.
_UNNAMED = " (EIFS manufacturer to confirm)"


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each build-up, with its walls."""
    alike: dict[str, tuple[list[str], list[Any]]] = {}
    for mark in context.project.members[("walls",)]:
        told = _tell(context, mark)
        alike.setdefault("".join(map(str, told)), ([], told))[0].append(mark)
    lines = tuple((span_marks(walls), told) for walls, told in alike.values())
    return TableView(("Wall", "Coats over the board, in order"), lines, (12, 88))


def _tell(context: DocumentContext, mark: str) -> list[Any]:
    """`base coat 3/32 in, 2 passes, [Mesh layers]; smoothing coat; primer; gloss, C1 champagne silver, 65 ...`."""
    counted = context.display(("smoothing", "coats"))
    smoothing = [] if counted.raw == 0 else [count_things(counted, "smoothing coat", "smoothing coats")]
    coats = [*smoothing, *([["primer"]] if context.project.get(("primer", "coats")) != 0 else [])]
    return join_cells([_tell_base_coat(context, mark), *coats, _tell_gloss(context, mark)])


def _tell_base_coat(context: DocumentContext, mark: str) -> list[Any]:
    thickness, passes = (context.display(("walls", mark, "base_coat", name)) for name in ("dry_thickness", "passes"))
    counted = [passes] if passes.open else count_things(passes, "pass", "passes")
    if context.is_marked and not context.project.is_given(("walls", mark, "base_coat", "product")):
        counted = [*counted, _UNNAMED] if not thickness.open and not passes.open else counted
    return ["base coat ", thickness, ", ", *counted, ", ", *_tell_mesh(context, mark)]


def _tell_mesh(context: DocumentContext, mark: str) -> list[Any]:
    """`heavy mesh in the high zone, standard mesh`, from the board out; asked for while none is given."""
    path: Path = ("walls", mark, "mesh", "layers")
    layers = context.project.members.get(path, ())
    if not layers:
        return [context.ask(path), *_tell_impact(context, mark)]
    order = sorted(layers, key=lambda layer: int(context.project.get((*path, layer, "order")) or 0))
    told = {"".join(map(str, cell)): cell for cell in (_tell_layer(context, (*path, layer)) for layer in order)}
    return [part for number, cell in enumerate(told.values()) for part in (*([", "] if number else []), *cell)]


def _tell_impact(context: DocumentContext, mark: str) -> list[Any]:
    """` for impact class high to 2 m, standard above`: what the mesh of a wall is to bear, of its elevations."""
    told: dict[str, tuple[list[str], list[Any]]] = {}
    for face in list_elevations(context, mark):
        zones = tell_zones(context, ("elevations", face))
        if zones:
            told.setdefault("".join(map(str, zones)), ([], zones))[0].append(face)
    cells = [[f"{span_marks(faces)}: " if len(told) > 1 else "", *zones] for faces, zones in told.values()]
    return [" for impact class ", *join_cells(cells)] if cells else []


def _tell_layer(context: DocumentContext, at: Path) -> list[Any]:
    """`heavy mesh in the high zone`; of a layer that covers the whole wall, or whose zone is open, no zone."""
    kind, zone = (context.project.get((*at, name)) for name in ("kind", "zone"))
    within = f" in the {words(zone)} zone" if zone not in (None, "all") else ""
    return [name_mesh(kind) if kind else context.display((*at, "kind")), within]


def _tell_gloss(context: DocumentContext, mark: str) -> list[Any]:
    """`gloss, C1 champagne silver, 62 ± 5 gloss units at 60°`."""
    units, tolerance, angle = (context.display(("gloss_target", name)) for name in ("units", "tolerance", "angle"))
    colors = list(dict.fromkeys(list_colors(context, mark))) or list(context.project.members.get(("colors",), ()))
    named = [
        [f"{color} ", context.display(("colors", color, "reference")), *_number(context, color)] for color in colors
    ]
    either = [] if tolerance.open else [" ± ", tolerance]
    gloss = [units] if units.open else [units, *either, " gloss units"]
    seen = [", ", angle] if angle.open else [" at ", angle, "°"]
    counted = context.display(("gloss", "coats"))
    coats = [] if counted.open else [*count_things(counted, "coat", "coats"), " of "]
    return [*coats, "gloss, ", *(join_cells(named) or [context.ask(("colors",))]), ", ", *gloss, *seen]


def _number(context: DocumentContext, color: str) -> list[Any]:
    """`, No. 4107`: the number of a color with its manufacturer, where it is given."""
    path = ("colors", color, "number")
    return [", No. ", context.display(path)] if context.project.is_given(path) else []
