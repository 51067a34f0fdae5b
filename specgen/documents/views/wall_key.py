"""The walls of the project by their marks: build-up in short, and net area."""

from collections.abc import Callable
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView
from specgen.documents.display_values import DisplayValue
from specgen.documents.marks import list_marks
from specgen.documents.views._areas import sum_areas
from specgen.model.value_text import words


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """One row for each wall."""
    lines = tuple((mark, _build_up(context, mark), _area(context, mark)) for mark in list_marks(context, "walls"))
    return TableView(("Wall", "Build-up, from the structure out", "Net area"), lines, (8, 72, 20))


def _build_up(context: DocumentContext, mark: str) -> list[Any]:
    """`cold-formed steel at 16 in; 5/8 in glass-mat gypsum; fluid-applied WRB; adhesive, full bed; 2 in EPS board`."""

    def display(path: str) -> DisplayValue:
        return context.display(("walls", mark, *path.split(".")))

    def choice(path: str) -> Any:
        return context.project.get(("walls", mark, *path.split(".")))

    thickness, base = choice("substrate.thickness"), choice("substrate.base")
    parts: list[Any] = _framing(display, choice)
    parts += [display("substrate.thickness"), " "] if thickness else []
    parts += [display("substrate.kind"), *([" over ", _name_base(display("substrate.base"))] if base else [])]
    if choice("wrb.kind") != "none":
        parts += ["; ", display("wrb.kind"), *([" WRB"] if choice("wrb.kind") else [])]
    board = choice("insulation.kind")
    parts += ["; ", display("attachment.method"), "; ", display("insulation.thickness"), " "]
    parts += [f"{words(board)} board" if board else display("insulation.kind")]
    return [*parts, "; base coat ", display("base_coat.dry_thickness"), " dry, with mesh; smoothing, primer, and gloss"]


def _name_base(base: DisplayValue) -> Any:
    """What sheathing stands over, as a noun."""
    return "framing" if base == "framed" else base


def _framing(display: Callable[[str], DisplayValue], choice: Callable[[str], Any]) -> list[Any]:
    """`cold-formed steel at 16 in, deflection L/360; `, and nothing where there is no framing."""
    if choice("framing.kind") in (None, "none"):
        return []
    parts: list[Any] = [display("framing.kind")]
    parts += [" at ", display("framing.spacing")] if choice("framing.spacing") else []
    parts += [", deflection ", display("framing.deflection_limit")] if choice("framing.deflection_limit") else []
    return [*parts, "; "]


def _area(context: DocumentContext, wall: str) -> Any:
    """The net area of all elevations of a wall; open where the wall of one is not known."""
    mine = []
    for mark in list_marks(context, "elevations"):
        linked = context.project.get(("elevations", mark, "wall"))
        if linked is None:
            return context.display(("elevations", mark, "wall"))
        mine += [mark] if linked.mark == wall else []
    return sum_areas(context, mine)
