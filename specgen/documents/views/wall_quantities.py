"""What walls take below the finish: barrier, adhesive, board, base coat, and mesh, each by its net area."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Any, cast

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import count_things
from specgen.documents.marks import list_marks
from specgen.documents.members import span_first
from specgen.documents.mesh_name import name_mesh
from specgen.documents.takeoff import tell_summed
from specgen.documents.views._areas import name_missing
from specgen.documents.views._bare import bare, head_unit
from specgen.documents.wall_areas import list_elevations
from specgen.judging.materials import GLUED
from specgen.model.absence import Absent
from specgen.model.field import Path
from specgen.model.typed_views import Elevation
from specgen.model.value_text import words
from specgen.scheduling.ledges import find_face_area, list_added_ledges
from specgen.scheduling.step_area import find_step_area

# The step whose area is that of a layer: all of the face, or the zones of heavy mesh.
_WHOLE, _HEAVY = "boards", "heavy_mesh"
_HEAVY_ZONES = ("high", "ultra_high")
_UNCOUNTED = ("masking of frames and trim", "sealant in laps of metal")
Material = tuple[str, list[Any], str]  # its name, its product with what is ordered, and the step


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each material and product, with the elevations that take it."""
    alike: dict[str, tuple[Material, list[str]]] = {}
    for wall in list_marks(context, "walls"):
        for material in _list_materials(context, ("walls", wall)):
            name, told, step = material
            key = f"{name}: {''.join(map(str, told))}: {step}"
            alike.setdefault(key, (material, []))[1].extend(list_elevations(context, wall))
    order = list(dict.fromkeys(name for (name, _, _), _ in alike.values()))
    lines = tuple(
        (name, told, _sum_areas(context, faces, step), span_first(faces))
        for (name, told, step), faces in sorted(alike.values(), key=lambda one: order.index(one[0][0]))
        if faces
    )
    lines += (*_list_ledges(context), *([("Not counted", _tell_uncounted(context), "", "")] if lines else ()))
    return TableView(("Item", "Product", head_unit(context, "Net area", "area"), "Where"), lines, (22, 40, 18, 20))


def _list_materials(context: DocumentContext, wall: Path) -> Iterator[Material]:
    """The materials of a wall from the substrate out."""
    project = context.project

    def shown(*path: str) -> Any:
        return context.display((*wall, *path))

    if project.get((*wall, "wrb", "kind")) not in (None, "none"):
        yield "WRB", [shown("wrb", "product"), ", ", shown("wrb", "kind")], _WHOLE
    if project.get((*wall, "attachment", "method")) in GLUED:
        yield "Adhesive", [shown("attachment", "product"), ", ", shown("attachment", "method")], _WHOLE
    board = ("insulation", "thickness"), ("insulation", "kind")
    yield "Board", [shown("insulation", "product"), ", ", shown(*board[0]), " ", shown(*board[1])], _WHOLE
    passes = shown("base_coat", "passes")
    counted = [passes] if passes.open else count_things(passes, "pass", "passes")
    thick = shown("base_coat", "dry_thickness")
    yield "Base coat", [shown("base_coat", "product"), ", ", thick, " dry in ", *counted], _WHOLE
    layers = (*wall, "mesh", "layers")
    if any(project.get((*layers, layer, "kind")) == "high_impact" for layer in project.members.get(layers, ())):
        yield "Base coat", [shown("base_coat", "product"), ", one pass more under heavy mesh"], _HEAVY
    for layer in project.members.get(layers, ()):
        yield from _list_mesh(context, (*layers, layer))


def _list_ledges(context: DocumentContext) -> Iterator[tuple[Any, ...]]:
    """The board that is added as ledges on each elevation, by the area of their faces."""
    for mark in list_marks(context, "elevations"):
        face = cast(Elevation, context.project.view(("elevations", mark)))
        ledges = list_added_ledges(face)
        area = sum((find_face_area(ledge) for ledge in ledges), Fraction(0))
        if area:
            product = context.display(("walls", face.wall.mark, "insulation", "product"))
            told = bare(context, tell_summed(context, area))
            yield "Board, adhesive", [product, f", ledge {', '.join(one.mark for one in ledges)}, full bed"], told, mark


def _tell_uncounted(context: DocumentContext) -> str:
    """What no area or length of the list tells: accessories, masking of what is not sprayed, and sealant in laps."""
    marks = context.project.members.get(("accessories",), ())
    kinds = dict.fromkeys(context.project.get(("accessories", mark, "kind")) for mark in marks)
    named = [words(kind) for kind in kinds if kind not in (None, "masking_tape")]
    return f"{', '.join([*named, *_UNCOUNTED])}: measure and order apart"


def _list_mesh(context: DocumentContext, layer: Path) -> Iterator[Material]:
    """A layer of mesh; detail mesh goes with joints and corners, and is counted with these."""
    kind, zone = (context.project.get((*layer, name)) for name in ("kind", "zone"))
    if kind in (None, "detail"):
        return
    name = name_mesh(kind)
    told: list[Any] = [context.display((*layer, "product"))]
    told += [f", {words(zone)} zone"] if zone not in (None, "all") else []
    yield name[:1].upper() + name[1:], told, _HEAVY if zone in _HEAVY_ZONES else _WHOLE


def _sum_areas(context: DocumentContext, elevations: list[str], step: str) -> Any:
    """The net area of a layer on these elevations, or the first field that is missing for it."""
    total = Fraction(0)
    for mark in elevations:
        try:
            total += find_step_area(cast(Elevation, context.project.view(("elevations", mark))), step).amount
        except Absent as absent:
            return name_missing(context, absent)
    return bare(context, tell_summed(context, total))
