"""The materials of the walls, the coats and the sealants, each with its manufacturer and product."""

from collections.abc import Callable, Iterator
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue, count_things
from specgen.documents.finish_name import is_metallic
from specgen.documents.marks import list_marks
from specgen.documents.views._materials import MaterialLine, party_name, set_materials
from specgen.model.value_text import words

_BEDS = {
    "adhesive_full_bed": "full bed",
    "adhesive_notched_trowel": "notched trowel",
    "adhesive_ribbon_and_dab": "ribbon and dab",
}
_ZONES = {"all": "all zones"}


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each material; what several walls share stands once."""
    return set_materials(context, [*_of_walls(context), *_coats(context), *_sealants(context)])


def _of_walls(context: DocumentContext) -> Iterator[MaterialLine]:
    """The materials of all walls, layer by layer; one that not every wall has bears the marks of its walls."""
    walls = list_marks(context, "walls")
    found: dict[str, tuple[MaterialLine, list[str]]] = {}
    for mark in walls:
        for line in _of_wall(context, mark):
            found.setdefault(line.text, (line, []))[1].append(mark)
    order = {"WRB": 0, "Adhesive": 1, "Insulation board": 2, "Base coat": 3}
    for line, marks in sorted(found.values(), key=lambda entry: order.get(entry[0].name, 4)):
        where = "" if len(marks) == len(walls) else f", {', '.join(marks)}"
        yield line._replace(name=line.name + where)


def _of_wall(context: DocumentContext, mark: str) -> Iterator[MaterialLine]:
    def display(path: str) -> DisplayValue:
        return context.display(("walls", mark, *path.split(".")))

    def choice(path: str) -> Any:
        return context.project.get(("walls", mark, *path.split(".")))

    eifs = party_name(context, "eifs_source")
    if choice("wrb.kind") != "none":
        barrier = party_name(context, "wrb_source")
        yield MaterialLine("WRB", _describe_wrb(display, choice), barrier, display("wrb.product"), "wrb")
    if choice("attachment.method") in _BEDS:
        product = display("attachment.product")
        yield MaterialLine("Adhesive", _describe_adhesive(display, choice), eifs, product, "adhesive")
    board = _describe_board(display, choice)
    yield MaterialLine("Insulation board", board, eifs, display("insulation.product"), "board")
    base = _describe_base_coat(display, choice, _has_heavy_mesh(context, mark))
    yield MaterialLine("Base coat", base, eifs, display("base_coat.product"), "base_coat")
    yield from _meshes(context, mark, eifs)


def _describe_wrb(display: Callable[[str], DisplayValue], choice: Callable[[str], Any]) -> list[Any]:
    """`ASTM E2570; fluid-applied; 2 coats, minimum 12 mil dry; drying, minimum 24 h`."""
    parts: list[Any] = [display("wrb.standard"), "; ", display("wrb.kind")]
    if choice("wrb.kind") != "fluid_applied":
        return parts
    parts += ["; ", *count_things(display("wrb.coats"), "coat", "coats")]
    return [*parts, ", minimum ", display("wrb.dry_thickness"), " dry; drying, minimum ", display("wrb.dry_hours")]


def _describe_adhesive(display: Callable[[str], DisplayValue], choice: Callable[[str], Any]) -> list[Any]:
    parts: list[Any] = [display("attachment.adhesive_kind"), f", {_BEDS[choice('attachment.method')]}"]
    return [*parts, " ", display("attachment.notch")] if parts[1] == ", notched trowel" else parts


def _describe_board(display: Callable[[str], DisplayValue], choice: Callable[[str], Any]) -> list[Any]:
    kind = choice("insulation.kind")
    parts: list[Any] = [words(kind) if kind else display("insulation.kind")]
    if kind == "eps":
        untyped = choice("insulation.c578_type") == "not_stated"
        parts = ["ASTM C578", *([] if untyped else [" Type ", display("insulation.c578_type")]), ", EPS"]
        parts = ["ASTM E2430; ", *parts] if choice("insulation.e2430") else parts
    parts += [", aged"] if choice("insulation.aged") else []
    parts += ["; ", display("insulation.thickness")]
    return [*parts, "; ", display("insulation.r_value")] if choice("insulation.r_value") else parts


def _describe_base_coat(display: Callable[[str], DisplayValue], choice: Callable[[str], Any], heavy: bool) -> list[Any]:
    """`ASTM E2568; class PB, cement added on site; 2 passes, minimum 3/32 in dry, over the heavy mesh layer`."""
    parts: list[Any] = ["ASTM E2568; "] if choice("base_coat.class") == "PB" else []
    parts += ["class ", display("base_coat.class"), ", ", display("base_coat.kind"), "; "]
    parts += [*count_things(display("base_coat.passes"), "pass", "passes"), ", minimum "]
    parts += [display("base_coat.dry_thickness"), " dry"]
    return [*parts, "; one pass more at heavy mesh"] if heavy else parts


def _meshes(context: DocumentContext, mark: str, by: Any) -> Iterator[MaterialLine]:
    """The mesh layers of a wall, from the board out."""
    path = ("walls", mark, "mesh", "layers")
    members = context.project.members.get(path, ())
    for layer in sorted(members, key=lambda n: int(context.project.get((*path, n, "order")) or 0)):
        at = (*path, layer)
        kind, zone = (context.display((*at, name)) for name in ("kind", "zone"))
        parts: list[Any] = ["ASTM E2098; ", context.display((*at, "weight")), "; ", context.display((*at, "edge"))]
        if context.project.get((*at, "edge")) == "lapped":
            parts += [" ", context.display((*at, "lap"))]
        parts += ["; ", _ZONES.get(str(zone.raw)) or [zone, " impact zone"]]
        yield MaterialLine(f"Mesh, {kind}", _flat(parts), by, context.display((*at, "product")), "mesh")


def _has_heavy_mesh(context: DocumentContext, mark: str) -> bool:
    path = ("walls", mark, "mesh", "layers")
    return any(context.project.get((*path, n, "kind")) == "high_impact" for n in context.project.members.get(path, ()))


def _flat(parts: list[Any]) -> list[Any]:
    """Parts without lists within."""
    return [part for entry in parts for part in (entry if isinstance(entry, list) else [entry])]


def _coats(context: DocumentContext) -> Iterator[MaterialLine]:
    by = party_name(context, "finish_source")
    tint = "" if context.project.get(("primer", "tinted")) is False else ", tinted"
    flake = ", metallic" if is_metallic(context) else ""
    described = {
        "smoothing": ("Smoothing coat", "trowel-applied"),
        "primer": ("Primer", f"spray-applied{tint}"),
        "gloss": ("Gloss", f"spray-applied, waterborne{flake}"),
    }
    for section, (name, said) in described.items():
        yield MaterialLine(name, [said], by, context.display((section, "product")), section)


def _sealants(context: DocumentContext) -> Iterator[MaterialLine]:
    by = party_name(context, "sealant_source")
    for mark in list_marks(context, "sealants"):
        at = ("sealants", mark)
        kind, grade, movement = (context.display((*at, f"c920_{name}")) for name in ("type", "grade", "class"))
        uses = ", uses NT, A, and O; " if _meets_aluminum(context) else ", uses NT and O; "
        parts: list[Any] = ["ASTM C920"]
        for name, value in (("Type", kind), ("Grade", grade), ("Class", movement)):
            # A type or grade that is none of the standard's is not told as one of them.
            parts += [] if value == "other" else ["," if len(parts) > 1 else "", f" {name} ", value]
        parts.append(uses)
        parts += [context.display((*at, "chemistry")), ", ", context.display((*at, "modulus")), " modulus"]
        if context.project.is_given((*at, "color")):
            parts += ["; ", context.display((*at, "color"))]
        yield MaterialLine(f"Sealant {mark}", parts, by, context.display((*at, "product")), "sealant")


def _meets_aluminum(context: DocumentContext) -> bool:
    """Whether a sealant joint is told to have aluminum on its other side: use A of ASTM C920."""
    faces = (context.project.get(("joints", mark, "other_face")) for mark in list_marks(context, "joints"))
    return any("aluminum" in str(face) for face in faces)
