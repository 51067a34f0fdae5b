"""How long each step dries or cures before the next: where the project gives it, and the row of the trade for it."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.documents.steps import applies
from specgen.model.field import Path

# The field of the hours; a star stands for each wall, or for each layer of its mesh.
DRYING: dict[str, Path] = {
    "wrb": ("walls", "*", "wrb", "dry_hours"),
    "boards": ("walls", "*", "attachment", "cure_hours"),
    "heavy_mesh": ("walls", "*", "mesh", "layers", "*", "dry_hours"),
    "mesh": ("walls", "*", "base_coat", "first_pass_dry_hours"),
    "second_pass": ("walls", "*", "base_coat", "cure_hours"),
    "smoothing_2": ("smoothing", "dry_hours"),
    "primer": ("primer", "dry_hours"),
    "gloss": ("gloss", "dry_hours"),
}
_BETWEEN: dict[str, Path] = {"smoothing_1": ("smoothing", "between_hours")}
# The row of the limits that stands in for a field not given.
_USUAL = {
    "boards": "adhesive.cure",
    "heavy_mesh": "mesh.heavy_dry",
    "second_pass": "base_coat.cure",
    "smoothing_2": "smoothing.dry",
    "primer": "primer.dry",
    "gloss": "gloss.dry",
}
_BY_MAKER = "per its manufacturer’s written instructions"


def tell_least_hours(context: DocumentContext, step: str) -> list[Any]:
    """The least hours in force behind a step as a cell: `36 h`, or `36 h (W1); 24 h (W2)` where walls differ."""
    of_text: dict[str, tuple[DisplayValue | str, list[str]]] = {}
    for wall, hours in _list_hours(context, step):
        of_text.setdefault(str(hours), (hours, []))[1].append(wall)
    if len(of_text) == 1:
        return [hours for hours, _ in of_text.values()]
    told: list[Any] = []
    for hours, walls in of_text.values():
        told += ["; " if told else "", hours, f" ({', '.join(walls)})"]
    return told


def _list_hours(context: DocumentContext, step: str) -> Iterator[tuple[str, DisplayValue | str]]:
    """The hours behind a step on each wall that takes it; those of a coat once, without a wall."""
    path = DRYING.get(step) or _BETWEEN[step]
    if path[0] != "walls":
        yield "", _in_force(context, step, [path])
        return
    for wall in context.project.members[("walls",)]:
        if applies(context.standards.steps[step].when, context, wall):
            yield wall, _in_force(context, step, _fill(context, path, wall))


def _fill(context: DocumentContext, path: Path, wall: str) -> list[Path]:
    """The paths of a pattern on one wall; of layers of mesh those of the heavy one."""
    at = ("walls", wall, *path[2:])
    if "*" not in at:
        return [at]
    star = at.index("*")
    layers = [(*at[:star], mark) for mark in context.project.members.get(at[:star], ())]
    return [(*layer, *at[star + 1 :]) for layer in layers if context.project.get((*layer, "kind")) == "high_impact"]


def _in_force(context: DocumentContext, step: str, paths: list[Path]) -> DisplayValue | str:
    """The longest hours given, else those usual in the trade, else the word of the manufacturer."""
    given = [context.display(path) for path in paths if context.project.get(path) is not None]
    if given:
        return max(given, key=lambda hours: float(hours.raw))
    return context.limit(_USUAL[step]) if step in _USUAL else _BY_MAKER
