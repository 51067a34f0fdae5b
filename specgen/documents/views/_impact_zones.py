"""The impact zones of an elevation, as a schedule tells them."""

from typing import Any

from specgen.documents.context import DocumentContext
from specgen.model.field import Path
from specgen.quantities.quantity import Quantity


def tell_zones(context: DocumentContext, at: Path) -> list[Any]:
    """`high to 7 ft, standard above`; both heights of a zone that does not begin where the one below it ends."""
    parts: list[Any] = []
    below, height = Quantity.of(0, "ft"), context.project.get((*at, "height"))
    for number in context.project.members.get((*at, "impact_zones"), ()):
        of, start, end = (context.display((*at, "impact_zones", number, name)) for name in ("class", "from", "to"))
        reach: list[Any] = ["to ", end] if start == below else [start, " to ", end]
        if parts and start == below and end == height:
            reach = ["above"]
        parts += [", " if parts else "", of, " ", *reach]
        below = end.raw
    return parts
