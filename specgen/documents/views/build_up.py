"""The build-up of each wall: layer, material by generic name and standard, manufacturer."""

from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.model.value_text import words


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each layer of each wall, from the substrate out."""
    lines: list[tuple[Any, ...]] = []
    for mark in context.project.members[("walls",)]:
        lines += _wall(context, mark)
    return TableView(("Wall", "Layer", "Material", "Standard, thickness", "Source"), tuple(lines), (8, 17, 30, 25, 20))


def _wall(context: DocumentContext, mark: str) -> list[tuple[Any, ...]]:

    def display(path: str) -> Any:
        return context.display(("walls", mark, *path.split(".")))

    def choice(path: str) -> Any:
        return context.project.get(("walls", mark, *path.split(".")))

    eifs, barrier = _source(context, "eifs_source"), _source(context, "wrb_source")
    substrate = ("walls", mark, "substrate")
    lines: list[tuple[Any, ...]] = [
        (
            mark,
            "Substrate",
            display("substrate.kind"),
            [display("substrate.standard"), ", ", display("substrate.thickness")]
            if context.project.is_given((*substrate, "standard"))
            else ["over ", display("substrate.base")]
            if context.project.is_given((*substrate, "base"))
            else "",
            "",
        )
    ]
    if choice("wrb.kind") != "none":
        lines.append((mark, "Weather barrier", display("wrb.kind"), display("wrb.standard"), barrier))
    lines.append((mark, "Attachment", display("attachment.method"), _adhesive(display, choice), eifs))
    lines.append((mark, "Board", _board(display, choice), display("insulation.thickness"), eifs))
    lines.append(
        (
            mark,
            "Base coat",
            [display("base_coat.kind"), ", class ", display("base_coat.class")],
            [display("base_coat.dry_thickness"), " dry; passes: ", display("base_coat.passes")],
            eifs,
        )
    )
    lines += _mesh(context, mark, eifs)
    return lines


def _adhesive(display: Any, choice: Any) -> list[Any]:
    if (
        not str(choice("attachment.method")).startswith("adhesive_")
        or choice("attachment.method") == "adhesive_and_mechanical"
    ):
        return []
    notch = (
        [", notch ", display("attachment.notch")] if choice("attachment.method") == "adhesive_notched_trowel" else []
    )
    return ["adhesive ", display("attachment.adhesive_kind"), *notch]


def _board(display: Any, choice: Any) -> list[Any]:
    name = choice("insulation.kind")
    if name is None:
        return [display("insulation.kind")]
    board = words(name)
    return [board, ", ASTM C578 type ", display("insulation.c578_type")] if name == "eps" else [board]


def _mesh(context: DocumentContext, mark: str, source: Any) -> list[tuple[Any, ...]]:
    path = ("walls", mark, "mesh", "layers")
    layers = sorted(
        context.project.members.get(path, ()), key=lambda n: int(context.project.get((*path, n, "order")) or 0)
    )
    lines: list[tuple[Any, ...]] = []
    for layer in layers:
        at = (*path, layer)
        lap = context.project.get((*at, "edge"))
        edge = [", ", context.display((*at, "edge"))] + (
            [" ", context.display((*at, "lap"))] if lap == "lapped" else []
        )
        lines.append((mark, "Mesh", [context.display((*at, "kind")), *edge], context.display((*at, "weight")), source))
    return lines


def _source(context: DocumentContext, role: str) -> Any:
    return context.display(("parties", role, "name"))
