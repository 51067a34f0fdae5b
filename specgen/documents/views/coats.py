"""The coats over the base coat: number, thickness, thinning, drying time."""

from collections.abc import Callable
from typing import Any

from specgen.documents.composing import Composer
from specgen.documents.context import DocumentContext, TableView


def rows(context: DocumentContext, composer: Composer) -> TableView:
    """Smoothing, primer and gloss, one row each."""
    lines = (_smoothing_line(context), _sprayed_line(context, "primer"), _sprayed_line(context, "gloss"))
    return TableView(("Coat", "Coats", "Film", "Cup time and water", "Drying"), lines, (17, 9, 24, 32, 18))


def _smoothing_line(context: DocumentContext) -> tuple[Any, ...]:
    display = _display_of(context, "smoothing")
    film = [display("total_thickness"), " in all, at most"]
    return "Smoothing coat", display("coats"), film, "not thinned beyond its instructions", display("dry_hours")


def _sprayed_line(context: DocumentContext, coat: str) -> tuple[Any, ...]:
    display = _display_of(context, coat)
    tinted = coat == "primer" and context.project.get(("primer", "tinted"))
    window = [display("cup_least"), " to ", display("cup_most"), " in cup ", display("cup")]
    water = ["; water ", display("max_water"), " at most"]
    film = [display("dry_film"), " dry, each coat"]
    return (
        "Primer, tinted" if tinted else coat.capitalize(),
        display("coats"),
        film,
        window + water,
        display("dry_hours"),
    )


def _display_of(context: DocumentContext, section: str) -> Callable[[str], Any]:
    return lambda name: context.display((section, name))
