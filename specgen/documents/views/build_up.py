"""The build-up of each wall: layer, material by its generic name and standard, source."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.value_text import words


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each layer of each wall, from the substrate out."""
    made: list[tuple[Any, ...]] = []
    for mark in context.project.members[("walls",)]:
        made += _wall(context, mark)
    return TableView(("Wall", "Layer", "Material", "Standard, thickness", "Source"), tuple(made), (8, 17, 30, 25, 20))


def _wall(context: DocumentContext, mark: str) -> list[tuple[Any, ...]]:

    def shown(path: str) -> Any:
        return context.display(("walls", mark, *path.split(".")))

    def kind(path: str) -> Any:
        return context.project.get(("walls", mark, *path.split(".")))

    eifs, barrier = _source(context, "eifs_source"), _source(context, "wrb_source")
    sheet = context.project.given(("walls", mark, "substrate", "standard"))
    made: list[tuple[Any, ...]] = [
        (
            mark,
            "Substrate",
            shown("substrate.kind"),
            [shown("substrate.standard"), ", ", shown("substrate.thickness")] if sheet else "",
            "",
        )
    ]
    if kind("wrb.kind") != "none":
        made.append((mark, "Weather barrier", shown("wrb.kind"), shown("wrb.standard"), barrier))
    made.append((mark, "Attachment", shown("attachment.method"), _adhesive(shown, kind), eifs))
    made.append((mark, "Board", _board(shown, kind), shown("insulation.thickness"), eifs))
    made.append(
        (
            mark,
            "Base coat",
            [shown("base_coat.kind"), ", class ", shown("base_coat.class")],
            [shown("base_coat.dry_thickness"), " dry; passes: ", shown("base_coat.passes")],
            eifs,
        )
    )
    made += _mesh(context, mark, eifs)
    return made


def _adhesive(shown: Any, kind: Any) -> list[Any]:
    if (
        not str(kind("attachment.method")).startswith("adhesive_")
        or kind("attachment.method") == "adhesive_and_mechanical"
    ):
        return []
    notch = [", notch ", shown("attachment.notch")] if kind("attachment.method") == "adhesive_notched_trowel" else []
    return ["adhesive ", shown("attachment.adhesive_kind"), *notch]


def _board(shown: Any, kind: Any) -> list[Any]:
    name = kind("insulation.kind")
    if name is None:
        return [shown("insulation.kind")]
    said = words(name)
    return [said, ", ASTM C578 type ", shown("insulation.c578_type")] if name == "eps" else [said]


def _mesh(context: DocumentContext, mark: str, source: Any) -> list[tuple[Any, ...]]:
    path = ("walls", mark, "mesh", "layers")
    layers = sorted(
        context.project.members.get(path, ()), key=lambda n: int(context.project.get((*path, n, "order")) or 0)
    )
    made: list[tuple[Any, ...]] = []
    for layer in layers:
        at = (*path, layer)
        lap = context.project.get((*at, "edge"))
        edge = [", ", context.display((*at, "edge"))] + (
            [" ", context.display((*at, "lap"))] if lap == "lapped" else []
        )
        made.append((mark, "Mesh", [context.display((*at, "kind")), *edge], context.display((*at, "weight")), source))
    return made


def _source(context: DocumentContext, role: str) -> Any:
    return context.display(("parties", role, "name"))
