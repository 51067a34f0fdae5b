"""How long each step dries or cures before the next, as documents print it."""

from collections.abc import Iterator
from typing import Any

from specgen.documents.context import DocumentContext
from specgen.documents.display_values import DisplayValue
from specgen.model.field import Path
from specgen.resolving.drying import BETWEEN, DRYING, USUAL, list_drying_paths
from specgen.scheduling.applying import applies

_BY_MAKER = "per its manufacturer's written instructions"


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
    path = DRYING.get(step) or BETWEEN[step]
    if path[0] != "walls":
        yield "", _in_force(context, step, [path])
        return
    for wall in context.project.members[("walls",)]:
        if applies(context.standards.steps[step].when, context.project, wall):
            yield wall, _in_force(context, step, list_drying_paths(context.project, path, wall))


def _in_force(context: DocumentContext, step: str, paths: list[Path]) -> DisplayValue | str:
    """The longest hours given, else those usual in the trade, else the word of the manufacturer."""
    given = [context.display(path) for path in paths if context.project.get(path) is not None]
    if given:
        return max(given, key=lambda hours: float(hours.raw))
    return context.limit(USUAL[step]) if step in USUAL else _BY_MAKER
