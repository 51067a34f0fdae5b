"""The layers of a wall from inside to outside, as the project tells them: what each is, how thick, how it is drawn."""

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.documents.context import DocumentContext
from specgen.documents.mesh_name import name_mesh
from specgen.model.series import join_series
from specgen.model.value_text import words
from specgen.quantities.quantity import Quantity

_HOLLOW = frozenset({"glass_mat_gypsum", "cement_board", "plywood", "osb", "paper_faced_gypsum", "metal"})
BASE_COAT = "Base coat and mesh"
POLYSTYRENE = frozenset({"eps", "xps"})  # the boards that ASTM C578 is about
_HELD = {"mechanical", "adhesive_and_mechanical"}
_DRAINED = {
    "adhesive_ribbons": ", drained between its ribbons",
    "grooved_board": ", grooved at the back",
}


@dataclass(frozen=True, slots=True)
class Layer:
    """A layer: how it is hatched, its words, and its thickness where it is drawn to scale.

    `name` names it shortly, as a step of a mockup does; `mesh` counts the layers of mesh drawn in it.
    """

    kind: str
    words: str
    name: str
    thickness: Quantity | None = None
    mesh: int = 0
    fastened: bool = False


def list_layers(context: DocumentContext, wall: str) -> tuple[Layer, ...]:
    """The layers of a wall; those that the project does not tell of are left out."""
    return (
        *_substrate(context, wall),
        *_barrier(context, wall),
        *_adhesive(context, wall),
        *_board(context, wall),
        *_base_coat(context, wall),
        *_coats(context),
    )


def _tell(context: DocumentContext, *path: str) -> str:
    """A value as it prints; empty where it is not given."""
    value = context.display(path)
    return "" if value.open else value.text


def _join(*parts: str) -> str:
    """The parts that are given, with commas; the first one with a capital."""
    said = ", ".join(filter(None, parts))
    return said[:1].upper() + said[1:]


def _substrate(context: DocumentContext, wall: str) -> Iterator[Layer]:
    at = ("walls", wall)
    kind = context.project.get((*at, "substrate", "kind"))
    framing = context.project.get((*at, "framing", "kind"))
    if framing not in (None, "none"):
        spacing = _tell(context, *at, "framing", "spacing")
        studs = f"{words(framing)} {'framing' if framing == 'wood' else 'studs'}"
        yield Layer("plain", _join(studs, f"{spacing} on center" if spacing else ""), "Framing")
    if kind is None:
        return
    thickness = context.project.get((*at, "substrate", "thickness"))
    hollow = kind in _HOLLOW
    said = _join(
        f"{words(kind)}{' sheathing' if hollow and kind not in ('metal', 'cement_board') else ''}",
        _tell(context, *at, "substrate", "thickness"),
        _tell(context, *at, "substrate", "standard"),
    )
    yield Layer(
        "sheathing" if hollow else "masonry",
        said,
        "Sheathing" if hollow else "Substrate",
        thickness if hollow else None,
    )


def _barrier(context: DocumentContext, wall: str) -> Iterator[Layer]:
    at = ("walls", wall, "wrb")
    kind = context.project.get((*at, "kind"))
    if kind in (None, "none"):
        return
    coats = context.project.get((*at, "coats"))
    film = _tell(context, *at, "dry_thickness")
    counted = f"{coats} {'coat' if coats == 1 else 'coats'}" if coats else ""
    yield Layer("film", _join(f"{words(kind)} WRB", counted, f"minimum {film} dry" if film else ""), "WRB")


def _adhesive(context: DocumentContext, wall: str) -> Iterator[Layer]:
    at = ("walls", wall)
    method, drainage = (context.project.get((*at, *path)) for path in (("attachment", "method"), ("drainage", "kind")))
    if drainage == "drainage_mat":
        yield Layer("mat", "Drainage mat", "Drainage mat")
    if method in (None, "direct_applied", "mechanical"):
        return
    kind = _tell(context, *at, "attachment", "adhesive_kind")
    notch = _tell(context, *at, "attachment", "notch")
    way = context.project.get((*at, "attachment", "ribbon_direction"))
    bed = {"adhesive_notched_trowel": "notched trowel", "adhesive_full_bed": "full bed"}.get(method, "ribbon and dab")
    ribbons = f"ribbons {way}" if way else ""
    said = _join(f"{kind} adhesive, {bed}".strip(), notch, ribbons)
    yield Layer("adhesive", said + _DRAINED.get(str(drainage), "") * (drainage == "adhesive_ribbons"), "Adhesive")


def _board(context: DocumentContext, wall: str) -> Iterator[Layer]:
    at = ("walls", wall, "insulation")
    kind, method = (context.project.get(path) for path in ((*at, "kind"), ("walls", wall, "attachment", "method")))
    thickness = context.project.get((*at, "thickness"))
    if kind is None or thickness is None:
        return
    rasp = _tell(context, *at, "rasp_allowance")
    type_ = context.project.get((*at, "c578_type"))
    rated = f"ASTM C578 Type {type_}" if kind in POLYSTYRENE and type_ not in (None, "not_stated") else ""
    said = _join(
        f"{words(kind)} board", _tell(context, *at, "thickness"), rated, f"rasped up to {rasp}" if rasp else ""
    )
    grooved = context.project.get(("walls", wall, "drainage", "kind")) == "grooved_board"
    held = method in _HELD
    more = _DRAINED["grooved_board"] * grooved + ", mechanically fastened" * held
    yield Layer("board", said + more, "Board", thickness, fastened=held)


def _base_coat(context: DocumentContext, wall: str) -> Iterator[Layer]:
    at = ("walls", wall, "base_coat")
    layers = ("walls", wall, "mesh", "layers")
    project = context.project
    meshes = [
        (project.get((*layers, mark, "kind")), project.get((*layers, mark, "zone")))
        for mark in project.members.get(layers, ())
    ]
    thickness, passes = _tell(context, *at, "dry_thickness"), project.get((*at, "passes"))
    told = [
        f"{name_mesh(kind)}{'' if zone in (None, 'all') else f' ({words(zone)} impact zone)'}"
        for kind, zone in meshes
        if kind not in (None, "detail")
    ]
    if not (thickness or told):
        return
    counted = f"{passes} {'pass' if passes == 1 else 'passes'}" if passes else ""
    if counted and len(told) > 1 and any(kind == "high_impact" for kind, _ in meshes):
        counted += ", one more at heavy mesh"
    said = _join("base coat", f"minimum {thickness} dry" if thickness else "", counted)
    yield Layer("lamina", said + (f"; {join_series(told)}" if told else ""), BASE_COAT, mesh=len(told))


def list_passes(context: DocumentContext, wall: str) -> list[str]:
    """The layers of the base coat as they are laid, each of which a stepped build-up leaves in view."""
    project, layers = context.project, ("walls", wall, "mesh", "layers")
    kinds = [project.get((*layers, mark, "kind")) for mark in project.members.get(layers, ())]
    told = [name for kind, name in (("high_impact", "Heavy mesh"), ("detail", "Detail mesh")) if kind in kinds]
    others = [words(kind) for kind in kinds if kind not in (None, "detail", "high_impact")]
    told.append(f"Base coat with {join_series(others)} mesh" if others else BASE_COAT)
    passes = project.get(("walls", wall, "base_coat", "passes"))
    return told + (["Leveling pass"] if passes and passes > 1 else [])


def _coats(context: DocumentContext) -> Iterator[Layer]:
    """Smoothing, primer and gloss."""
    for coat, name in (("smoothing", "Smoothing coat"), ("primer", "Primer"), ("gloss", "Gloss")):
        coats = context.project.get((coat, "coats"))
        film = _tell(context, coat, "total_thickness" if coat == "smoothing" else "dry_film")
        if coats == 0 or not (coats or film):
            continue
        tint = "Tinted primer" if coat == "primer" and context.project.get((coat, "tinted")) else name
        counted = f"{coats} {'coat' if coats == 1 else 'coats'}" if coats else ""
        each = " each" if coats and coats > 1 else ""
        bound = f"maximum {film} total" if coat == "smoothing" else f"minimum {film} dry{each}"
        yield Layer("coat", _join(tint, counted, bound if film else ""), name)
